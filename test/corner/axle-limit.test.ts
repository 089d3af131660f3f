import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { staticAxleLoadsN, weightN } from '../../src/car/chassis.ts';
import { brakeLimit } from '../../src/corner/axle-limit.ts';
import { axleUse } from '../../src/corner/axle-use.ts';
import { expectRelative } from '../close-to.ts';
import {
  GT_WITHOUT_AIR as CAR,
  GT_CHASSIS,
  GT_FRONT_BRAKE_SHARE as PHI,
  GT_TYRE as tyre,
} from '../reference/gt-example.ts';

const G = 9.80665;
const { front: frontLoad, rear: rearLoad } = staticAxleLoadsN(GT_CHASSIS);
const front = brakeLimit(CAR, 'front');
const rear = brakeLimit(CAR, 'rear');
const lateral = (ayG: number, arm: number): number => (1250 * ayG * G * arm) / 2.6;

describe('axle friction circles of the GT example, friction 1.4', () => {
  // Hand-worked: force and moment balance of the two-axle model, checked by substitution below.
  test.each([
    [0, 15421.418],
    [0.5, 14723.789],
    [1.0, 12299.077],
    [1.3, 9198.365],
  ])('front limit at %f g', (ayG, force) => {
    expectRelative(front(frontLoad, lateral(ayG, 1.25), 0), force, 1e-6);
  });

  test.each([
    [0, 19163.998],
    [0.8, 12725.816],
    [1.2, 4929.692],
  ])('rear limit at %f g', (ayG, force) => {
    expectRelative(rear(rearLoad, lateral(ayG, 1.35), 0), force, 1e-5);
  });

  test('the limits lie on the circles they come from', () => {
    const y = lateral(0.9, 1.25);
    const f = front(frontLoad, y, 0);
    expectRelative(Math.hypot(PHI * f, y), 1.4 * (frontLoad + (f * 0.45) / 2.6), 1e-12);
    const yr = lateral(0.9, 1.35);
    const r = rear(rearLoad, yr, 0);
    expectRelative(Math.hypot((1 - PHI) * r, yr), 1.4 * (rearLoad - (r * 0.45) / 2.6), 1e-12);
  });

  test('engine braking comes off the rear limit: the sum stays on the circle', () => {
    const y = lateral(0.5, 1.35);
    const f = rear(rearLoad, y, 1500);
    const load = rearLoad - ((f + 1500) * 0.45) / 2.6;
    expectRelative(Math.hypot((1 - PHI) * f + 1500, y), 1.4 * load, 1e-12);
    expect(f).toBeLessThan(rear(rearLoad, y, 0));
    expect(rear(rearLoad, y, 9000)).toBe(0);
  });

  test('engine braking of a front-driven car comes off the front limit and still moves load', () => {
    const y = lateral(0.5, 1.25);
    const onFront = brakeLimit({ ...CAR, frontDriveShare: 1 }, 'front')(frontLoad, y, 1500);
    const carried = (f: number): number => 1.4 * (frontLoad + ((f + 1500) * 0.45) / 2.6);
    expectRelative(Math.hypot(PHI * onFront + 1500, y), carried(onFront), 1e-12);
    const onRear = front(frontLoad, y, 1500);
    expectRelative(Math.hypot(PHI * onRear, y), carried(onRear), 1e-12);
  });

  test('no brake force is left for an axle that cannot carry the corner', () => {
    expect(rear(rearLoad, 1.4 * rearLoad, 0)).toBe(0);
    expect(front(frontLoad, 1.5 * frontLoad, 0)).toBe(0);
  });
});

describe('asked for no more than a force', () => {
  const sensitive = { ...tyre, loadSensitivity: -0.1 };
  const loaded = { ...CAR, frontTyre: sensitive, rearTyre: sensitive };

  test.each([
    ['front', 0.5, 14723.789],
    ['rear', 0.8, 12725.816],
  ] as const)('the %s axle gives that or its own limit, whichever is less', (side, ayG, most) => {
    const [loadN, arm] = side === 'front' ? [frontLoad, 1.25] : [rearLoad, 1.35];
    const limit = brakeLimit(CAR, side);
    for (const askedN of [0, 1, 5000, most - 1]) {
      expect(limit(loadN, lateral(ayG, arm), 0, askedN)).toBe(askedN);
    }
    for (const askedN of [most + 1, 1e5, Number.POSITIVE_INFINITY])
      expectRelative(limit(loadN, lateral(ayG, arm), 0, askedN), most, 1e-5);
  });

  test.each(['front', 'rear'] as const)(
    'so does the %s axle on tyres that lose with load',
    (side) => {
      const [loadN, arm] = side === 'front' ? [frontLoad, 1.25] : [rearLoad, 1.35];
      const limit = brakeLimit(loaded, side);
      for (const ayG of [0, 0.3, 0.6, 0.9]) {
        const most = limit(loadN, lateral(ayG, arm), 1000);
        for (const share of [0.01, 0.3, 0.999, 1.001, 3]) {
          const asked = limit(loadN, lateral(ayG, arm), 1000, share * most);
          expectRelative(asked, Math.min(1, share) * most, 1e-9);
        }
      }
    },
  );
});

// Second gear on a closed throttle: 1246.23 N at the rear axle; friction 1.
test('engine braking moves the lock of the rear axle from 1.312024 to 1.112335 g', () => {
  const slippery = { ...tyre, longitudinalFriction: 1, lateralFriction: 1 };
  const limit = brakeLimit({ ...CAR, rearTyre: slippery }, 'rear');
  expectRelative(limit(rearLoad, 0, 0) / weightN(GT_CHASSIS), 1.312024, 1e-5);
  expectRelative((limit(rearLoad, 0, 1246.23) + 1246.23) / weightN(GT_CHASSIS), 1.112335, 1e-5);
});

// The lateral force of the front axle is largest, 1.052438 times that without brakes, at 3664.76 N of brake force
// (0.298965 g), where the rear axle still has 0.895677 of its own.
describe('a little braking gives the front axle its highest lateral force', () => {
  /** On a bend taken at 1 m/s, so that its curvature is the lateral acceleration. */
  const use = (brakeForceN: number, accelYMps2: number) => {
    const road = { curvatureAt: () => accelYMps2, slopeAt: () => 0, bankAt: () => 0 };
    return axleUse(CAR, road, { sM: 0, speedMps: 1, brakeForceN, engineN: 0 });
  };
  const most = (1.052438 * 1.4 * frontLoad * 2.6) / (1250 * 1.25);

  test('at 0.299 g, and at no other braking', () => {
    expectRelative(use(3664.76, most).front, 1, 1e-6);
    for (const brakeForceN of [0, 2500, 3500, 3850, 5000])
      expect(use(brakeForceN, most).front).toBeGreaterThan(1.00002);
  });

  test('what it costs the rear axle', () => {
    const left = (0.895677 * 1.4 * rearLoad * 2.6) / (1250 * 1.35);
    expectRelative(use(3664.76, left).rear, 1, 1e-5);
  });
});

// (s F + E)^2 + (Y mu_x / mu_y)^2 = C(N + g F)^2 as it stands, looked for by going up in steps and halving: two tyres
// under N/2 +- Y h / t, each with mu F (1 + eps (F - F0) / F0), and a brake split that bends.
describe('tyres that lose friction with load', () => {
  interface Case {
    readonly side: 'front' | 'rear';
    readonly mu: number;
    readonly sensitivity: number;
    readonly share: number;
    readonly cgHeightM: number;
    readonly loadN: number;
    readonly across: number;
    readonly engineN: number;
  }
  const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const cases: fc.Arbitrary<Case> = fc.record({
    side: fc.constantFrom('front' as const, 'rear' as const),
    mu: range(0.5, 2),
    sensitivity: range(-0.2, 0),
    share: range(0.5, 0.8),
    cgHeightM: range(0.25, 0.65),
    loadN: range(3000, 14_000),
    /** Of what the axle could do across. */
    across: range(0, 1),
    engineN: range(0, 800),
  });

  /** Load comes to the front axle nearly as fast as the brakes use it up. */
  const STEEP: Case = {
    side: 'front',
    mu: 1.95,
    sensitivity: -0.2,
    share: 0.5,
    cgHeightM: 0.62,
    loadN: 9000,
    across: 0.3,
    engineN: 0,
  };

  test('the limit is the first force that the axle no longer carries', () => {
    fc.assert(
      fc.property(cases, ({ side, mu, sensitivity, share, cgHeightM, loadN, across, engineN }) => {
        const split = [
          { fromN: 0, share: 1, offsetN: 0 },
          { fromN: 300, share, offsetN: 300 - 300 * share },
          { fromN: 9000, share: share + 0.1, offsetN: 300 - 300 * share - 900 },
        ];
        const frontN = (forceN: number): number =>
          Math.min(forceN, 300) +
          share * Math.max(0, forceN - 300) +
          0.1 * Math.max(0, forceN - 9000);
        const one = (wheelN: number): number =>
          wheelN * Math.max(0.1, 1 + (sensitivity * (wheelN - 3000)) / 3000);
        const carriedN = (axleN: number, acrossN: number): number => {
          const moved = Math.min(axleN / 2, (acrossN * cgHeightM) / 1.6);
          return mu * (one(axleN / 2 + moved) + one(axleN / 2 - moved));
        };
        const acrossN = across * 0.9 * carriedN(loadN, mu * loadN);
        const spareN = (forceN: number): number => {
          const gainedN = ((side === 'front' ? 1 : -1) * cgHeightM * (forceN + engineN)) / 2;
          if (loadN + gainedN <= 0) return -1;
          const ownN = side === 'front' ? frontN(forceN) : forceN - frontN(forceN) + engineN;
          return carriedN(loadN + gainedN, acrossN) - Math.hypot(ownN, acrossN / 0.9);
        };
        fc.pre(spareN(0) >= 0);
        const expected = firstBelow(spareN);
        fc.pre(Number.isFinite(expected));
        const chassis = { ...GT_CHASSIS, cgToFrontM: 1.1, cgToRearM: 0.9, cgHeightM };
        const soft = { ...tyre, longitudinalFriction: mu, lateralFriction: 0.9 * mu };
        const lossy = { ...soft, loadSensitivity: sensitivity };
        const car = { ...CAR, chassis, brakeSplit: split, frontTyre: lossy, rearTyre: lossy };
        const found = brakeLimit(car, side)(loadN, acrossN, engineN);
        expect(Math.abs(found - expected)).toBeLessThan(1e-7 * Math.max(1, expected));
      }),
      { numRuns: 500, examples: [[STEEP]] },
    );
  });

  /** Infinity where there is none within a million. */
  function firstBelow(f: (x: number) => number): number {
    let low = 0;
    while (low < 1e6 && f(low + 50) >= 0) low += 50;
    if (low >= 1e6) return Number.POSITIVE_INFINITY;
    let high = low + 50;
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (f(middle) >= 0) low = middle;
      else high = middle;
    }
    return low;
  }
});

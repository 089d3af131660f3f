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

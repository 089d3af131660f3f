import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { joinPath } from '../../src/corner/path.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveEvent } from '../../src/live/live-event.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';
import { recordOf } from './rigs.ts';
import { BRAKES_AND_AIR, NO_AIR, passing, straightZone } from './straight.ts';

const G = 9.80665;
const MU = 1.4;
const tyres = GT_CAR.tyres;
/** Friction 1.4, no air, no engine. */
const BARE: Car = { ...NO_AIR, tyres };

const from = (timeS: number, level: number) => (t: number) => (t >= timeS ? level : 0);

type Lasting = Extract<LiveEvent, { readonly toM: number | null }>;

function lockUps({ end }: LiveRun): Lasting[] {
  return end.events.filter((event): event is Lasting => event.kind === 'lock-up');
}

describe('pressure beyond the limit', () => {
  // Wheels without inertia lock at once; then D = 0.8 mu g for both axles, load transfer or not.
  test('lengthens the stop by the sliding share: s = (v0^2 - v1^2) / (2 c mu g)', () => {
    const wheel = { inertiaKgm2: 1e-6, slidingShare: 0.8 };
    const car = { ...BARE, wheels: { front: wheel, rear: wheel }, fullScalePedalForceN: 4000 };
    const run = driveRecord(straightZone(car, 60), recordOf({ brake: from(0, 1), endS: 6 }));
    const { placeM } = passing(run, 10);
    expectRelative(placeM, (60 ** 2 - 10 ** 2) / (2 * 0.8 * MU * G), 1e-3);
    expect(lockUps(run).map(({ axle }) => axle)).toEqual(['front', 'rear']);
  });

  // In an arc that takes 9 of 13.7 m/s^2: the locked tyres slide straight on, and all they have left is against the motion.
  test('in an arc locked tyres give nothing across and the whole sliding friction along', () => {
    const wheel = { inertiaKgm2: 1e-6, slidingShare: 0.8 };
    const car = { ...BARE, wheels: { front: wheel, rear: wheel }, fullScalePedalForceN: 4000 };
    const path = joinPath([
      { kind: 'constant', lengthM: 5000, startCurvature: 0.01, endCurvature: 0.01 },
    ]);
    const record = recordOf({ brake: from(0, 1), endS: 0.1 });
    const { end } = driveRecord(straightZone(car, 30, { path }), record);
    expect([end.front.slip, end.rear.slip]).toEqual([1, 1]);
    expectRelative(-end.accelXMps2, 0.8 * MU * G, 1e-9);
  });

  // 20 m/s^2 asked of tyres that give 13.7: the car runs wide, and its wheels roll all the same.
  test('a wheel that nothing holds spins up again where the corner asks for more than grip', () => {
    const car = { ...BARE, fullScalePedalForceN: 4000 };
    const path = joinPath([
      { kind: 'constant', lengthM: 5000, startCurvature: 0.01, endCurvature: 0.01 },
    ]);
    const brake = (t: number): number => (t >= 0 && t < 0.3 ? 1 : 0);
    const run = driveRecord(straightZone(car, 48, { path }), recordOf({ brake, endS: 0.6 }));
    expect(lockUps(run).map(({ axle }) => axle)).toEqual(['front', 'rear']);
    expect(run.end.front.slip).toBeLessThan(0.001);
    // The engine still drags at the rear.
    expect(run.end.rear.slip).toBeLessThan(0.001);
    expect(run.end.front.use).toBeGreaterThan(1);
  });

  // dv / dt = -c mu g with the wheels stopped: brakes that do not turn do no work.
  test('locked brakes make no heat', () => {
    const wheel = { inertiaKgm2: 1e-6, slidingShare: 0.8 };
    const car = { ...BARE, wheels: { front: wheel, rear: wheel }, fullScalePedalForceN: 4000 };
    const { end } = driveRecord(straightZone(car, 60), recordOf({ brake: from(0, 1), endS: 2 }));
    expect(end.workJ.front + end.workJ.rear).toBeLessThan(0.001 * 0.5 * 1250 * 60 ** 2);
  });

  // Just after the limit is passed the wheels slow by (T - F r) / J: here the force is still the whole friction. With
  // T = 1.5 F r: slip grows at 0.5 mu N r^2 / (2 J v). All load on a front axle without brakes behind it.
  test('slows the wheels by (T - F r) / (J omega)', () => {
    const chassis = { ...GT_CAR.chassis, cgToFrontM: 0.001, cgToRearM: 2.599, cgHeightM: 0 };
    const brakes = { ...GT_CAR.brakes, balanceBarFront: 1 };
    const wheel = { inertiaKgm2: 1.2, slidingShare: 1 };
    const car = { ...BARE, chassis, brakes, wheels: { front: wheel, rear: wheel } };
    const perPedalN = 18747.67 / 700 / 0.58;
    const loadN = (1250 * G * 2.599) / 2.6;
    const level = (1.5 * MU * loadN) / perPedalN / 1000;
    const { end } = driveRecord(
      straightZone(car, 60),
      recordOf({ brake: from(0, level), endS: 0.0205 }),
    );
    const rate = (0.5 * MU * loadN * 0.33 ** 2) / (2 * 1.2);
    const mean = 60 - 0.5 * MU * G * 0.02;
    expect(end.step).toBe(3021);
    expectRelative(end.front.slip, (rate * 0.021) / mean, 5e-3);
  });

  test('names the axle that locks: the rear with the balance bar too far back', () => {
    const rearward = { ...BRAKES_AND_AIR, brakes: { ...GT_CAR.brakes, balanceBarFront: 0.3 } };
    const axles = (car: Car, level: number) =>
      lockUps(driveRecord(straightZone(car, 60), recordOf({ brake: from(0, level), endS: 1 }))).map(
        ({ axle }) => axle,
      );
    expect(axles(BRAKES_AND_AIR, 0.75)).toEqual(['front']);
    expect(axles(rearward, 0.95)).toEqual(['rear']);
    expect(axles(BRAKES_AND_AIR, 0.45)).toEqual([]);
  });
});

describe('ease, re-apply, carry on', () => {
  const eased = (t: number) => (t < 0 ? 0 : t < 0.6 ? 0.8 : t < 0.8 ? 0.1 : 0.44);
  const stay = from(0, 0.8);

  test('the wheels come back, and the stop is shorter than with the foot staying in', () => {
    const zone = straightZone(BARE, 60);
    const run = driveRecord(zone, recordOf({ brake: eased, endS: 7 }));
    const stayed = driveRecord(zone, recordOf({ brake: stay, endS: 7 }));
    // With the front sliding less load comes forward, and in the end the rear goes too.
    expect(lockUps(run).map(({ axle }) => axle)).toEqual(['front', 'rear']);
    for (const { fromS, toS } of lockUps(run)) {
      expect(fromS).toBeGreaterThan(0);
      expect(toS).toBeGreaterThan(0.6);
      expect(toS).toBeLessThan(0.8);
    }
    expect(lockUps(stayed).at(-1)?.toM).toBeNull();
    expect(passing(run, 10).placeM).toBeLessThan(passing(stayed, 10).placeM - 3);
  });

  test('easing too little leaves the wheels where they are', () => {
    const tooLittle = (t: number) => (t < 0 ? 0 : t < 0.6 ? 0.8 : 0.45);
    const { end } = driveRecord(straightZone(BARE, 60), recordOf({ brake: tooLittle, endS: 1.5 }));
    expect(end.front.slip).toBe(1);
  });
});

// Bump in the small: N0 3500 N at each wheel, r 0.31 m, mu 1.5, J 1.2 kg m^2, depth 0.3 over 0.05 s. The wheel loses
// 12.951233 rad/s at the limit of grip and 4.434847 rad/s with 15 % to spare.
describe.each([
  { use: 1, lossRadps: 12.951233 },
  { use: 0.85, lossRadps: 4.434847 },
])('a bump at a use of $use', ({ use, lossRadps }) => {
  test(`takes ${lossRadps} rad/s from the wheel`, () => {
    const speedMps = 60;
    // So heavy behind that 7000 N on the front axle hardly slow the car.
    const massKg = 1e6;
    const cgToRearM = (7000 * 2.6) / (massKg * G);
    const chassis = {
      ...GT_CAR.chassis,
      massKg,
      cgToRearM,
      cgToFrontM: 2.6 - cgToRearM,
      cgHeightM: 0,
    };
    const front = { ...GT_CAR.brakes.front, wheelRadiusM: 0.31 };
    const tyre = { ...tyres.front, longitudinalFriction: 1.5 };
    const wheel = { inertiaKgm2: 1.2, slidingShare: 1 };
    const car = {
      ...BARE,
      chassis,
      brakes: { ...GT_CAR.brakes, balanceBarFront: 1, front },
      tyres: { front: tyre, rear: tyre },
      wheels: { front: wheel, rear: wheel },
    };
    const perPedalN = ((18747.67 / 700 / 0.58) * 0.33) / 0.31;
    const level = (0.99999 * use * 1.5 * 7000) / perPedalN / 1000;
    const bumps = [{ atM: 6, lengthM: 0.05 * speedMps, depth: 0.3 }];
    const run = driveRecord(
      straightZone(car, speedMps, { bumps }),
      recordOf({ brake: from(0, level), endS: 0.16 }),
    );
    expect(run.columns.frontUse[3050]).toBeCloseTo(use, 3);
    let most = 0;
    for (let endS = 0.1; endS < 0.16; endS += 0.002) {
      const { end } = driveRecord(
        straightZone(car, speedMps, { bumps }),
        recordOf({ brake: from(0, level), endS }),
      );
      most = Math.max(most, end.front.slip);
    }
    expectRelative((most * speedMps) / 0.31, lossRadps, 3e-3);
  });
});

// Half a sine: 0.3 sin(45 degrees) of the load are gone after a quarter of the bump, 0.3 in its middle, nothing at its end.
test('a bump takes the load away as half a sine of its length', () => {
  const bumps = [{ atM: 0, lengthM: 40, depth: 0.3 }];
  const zone = straightZone(NO_AIR, 40, { bumps });
  const useAt = (endS: number) =>
    driveRecord(zone, recordOf({ brake: from(endS - 0.0004, 0.1), endS: endS + 0.0005 })).end.front
      .use;
  const flat = useAt(-0.5);
  expectRelative(flat / useAt(0.25), 1 - 0.3 * Math.SQRT1_2, 1e-9);
  expectRelative(flat / useAt(0.5), 0.7, 1e-9);
  expectRelative(flat / useAt(0.75), 1 - 0.3 * Math.SQRT1_2, 1e-9);
  expectRelative(useAt(1.01), flat, 1e-9);
});

describe('anti-lock', () => {
  const antiLock = {
    front: { releaseAtUse: 1, reapplyAtUse: 0.95 },
    rear: { releaseAtUse: 1, reapplyAtUse: 0.95 },
    releasePerS: 10,
    reapplyPerS: 5,
  };
  test('holds the use near its release value, whatever the foot does, and nothing locks', () => {
    const car = { ...BRAKES_AND_AIR, antiLock };
    const run = driveRecord(straightZone(car, 60), recordOf({ brake: from(0, 0.9), endS: 2 }));
    expect(lockUps(run)).toEqual([]);
    const axles = run.end.events.map((event) => (event.kind === 'anti-lock' ? event.axle : ''));
    expect(axles).toContain('front');
    const uses = run.columns.frontUse.subarray(3500);
    expect(Math.max(...uses)).toBeLessThan(1.03);
    expect(Math.min(...uses)).toBeGreaterThan(0.92);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import type { BrakingModel } from '../../src/corner/braking-model.ts';
import { joinPath, type Path } from '../../src/corner/path.ts';
import { pointMassModel } from '../../src/corner/point-mass.ts';
import {
  type BackwardPass,
  brakeToSlowest,
  type ProfilePoint,
} from '../../src/corner/speed-profile.ts';
import { type TwoAxleCar, twoAxleModel } from '../../src/corner/two-axle.ts';
import { solveZone } from '../../src/target/derive/derive-zone.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import { GT_AERO, GT_CHASSIS } from '../reference/gt-example.ts';

/** Closed forms and laws that hold for any integrator; worked out by hand, see each test for its formula. */
const G = 9.80665;
const NONE = Number.POSITIVE_INFINITY;

const at = (points: readonly ProfilePoint[], sM: number): ProfilePoint =>
  points.find((point) => Math.abs(point.sM - sM) < 1e-9) as ProfilePoint;

/** Backward from a given speed: the corner's own limit is asked only there. */
const from = (model: BrakingModel, slowestM: number, speedMps: number): BrakingModel => ({
  ...model,
  cornerLimit: (sM) => (sM >= slowestM ? speedMps ** 2 : NONE),
  releaseLaw: () => null,
});

const solve = (
  model: BrakingModel,
  slowestM: number,
  joints: readonly number[],
  more: Partial<BackwardPass> = {},
): ProfilePoint[] =>
  brakeToSlowest(model, {
    slowestM,
    fromM: 0,
    jointsM: joints,
    stepM: 1,
    stopAboveMps: NONE,
    releaseNps: NONE,
    ...more,
  });

const tyre = {
  longitudinalFriction: 1.4,
  lateralFriction: 1.4,
  referenceLoadN: 3000,
  loadSensitivity: 0,
};
const GT: TwoAxleCar = {
  chassis: GT_CHASSIS,
  aero: GT_AERO,
  frontTyre: tyre,
  rearTyre: tyre,
  trackM: 1.6,
  frontBrakeShare: 0.777329,
  frontDriveShare: 0,
  rollingResistance: 0,
  gripShare: 1,
};
const NO_AIR: TwoAxleCar = { ...GT, aero: { ...GT_AERO, dragAreaM2: 0, downforceAreaM2: 0 } };
const flat = (curvatureAt: Path['curvatureAt']) => ({
  curvatureAt,
  slopeAt: () => 0,
  bankAt: () => 0,
});

test('diamond of 1.4 g along and 1.6 g across on 60 m: w = a_y/k - (a_y/k - w0) exp(2 k a_x s / a_y)', () => {
  const top = 1.6 * G * 60;
  const model: BrakingModel = {
    limit: (_, w) => ({
      decelerationMps2: 1.4 * G * (1 - w / top),
      brakeForceN: 0,
      limiter: 'grip',
    }),
    decelerationMps2: () => 0,
    cornerLimit: () => NONE,
    releaseLaw: () => null,
  };
  const points = solve(from(model, 20, 27.7980659), 20, [10]);
  expectRelative(at(points, 10).speedMps, 28.5554218, 1e-8);
  expectRelative(at(points, 0).speedMps ** 2, 0.9 * top, 1e-7);
});

test('linear-in-time release from 1.5 g over 1.8 s: dv = D T / 2, distance = v1 T + D T^2 / 6', () => {
  // The straight carries 3 g; the foot gives up 1.5 g in 1.8 s.
  const model: BrakingModel = {
    limit: (_, __, mostN = NONE) => {
      const brakeForceN = Math.min(3 * G, mostN);
      return { decelerationMps2: brakeForceN, brakeForceN, limiter: 'foot' };
    },
    decelerationMps2: (_, __, forceN) => forceN,
    cornerLimit: () => NONE,
    releaseLaw: () => null,
  };
  const lengthM = 56.759531;
  const points = solve(from(model, lengthM, 27.12008), lengthM, [], {
    releaseNps: (1.5 * G) / 1.8,
    stepM: 0.1,
  });
  expectRelative(at(points, 0).speedMps - 27.12008, 13.238978, 1e-5);
  expectRelative(at(points, 0).toSlowestS, 1.8, 1e-5);
  expectRelative(at(points, 0).decelerationMps2, 1.5 * G, 1e-5);
});

test('clothoid to its limit, sigma 1: share of the grip left for the brake (two independent solvers)', () => {
  const model = pointMassModel(
    { massKg: 1, alongMps2: G, acrossMps2: G, downforceShare: 0, dragPerMetre: 0 },
    (s) => 1e-4 * s,
  );
  const points = solve(model, 100, [25, 50, 75]);
  for (const [sM, share] of [
    [75, 0.478416],
    [50, 0.682894],
    [25, 0.886074],
  ] as const)
    expectRelative(at(points, sM).decelerationMps2 / G, share, 1e-5);
});

test('highest speed of a flat curve of 50 m on friction 0.15: 8.577587 m/s (Tayal, Engineering Mechanics, ex. 15.18)', () => {
  // The book takes g as 9.81.
  const friction = (0.15 * 9.81) / G;
  const dull = { ...tyre, longitudinalFriction: friction, lateralFriction: friction };
  const model = twoAxleModel(
    { ...NO_AIR, frontTyre: dull, rearTyre: dull },
    flat(() => 1 / 50),
  );
  expectRelative(Math.sqrt(model.cornerLimit(0)), 8.577587, 1e-6);
});

describe('a corner that is none', () => {
  test('no curvature: the front-limited stop from 75 to 25 m/s in 136.6047 m and 2.867325 s', () => {
    const straight = twoAxleModel(
      GT,
      flat(() => 0),
    );
    expect(straight.cornerLimit(0)).toBe(NONE);
    const points = solve(from(straight, 136.6047, 25), 136.6047, []);
    expectRelative(at(points, 0).speedMps, 75, 1e-6);
    expectRelative(at(points, 0).toSlowestS, 2.867325, 1e-6);
    expect(points.every(({ limiter }) => limiter === 'front axle')).toBe(true);
  });

  test('one radius: nothing to brake at the limit of grip, at one speed', () => {
    const arc = twoAxleModel(
      NO_AIR,
      flat(() => 1 / 50),
    );
    for (const { speedMps, brakeForceN } of solve(arc, 40, [])) {
      expectRelative(speedMps, Math.sqrt(1.4 * G * 50), 1e-9);
      expect(brakeForceN).toBeLessThan(1);
    }
  });
});

test('similarity without air: lengths times x and speeds times its root leave the deceleration as it is', () => {
  const smooth = (lengthM: number, radiusM: number): Path =>
    joinPath([{ kind: 'smooth', lengthM, startCurvature: 0, endCurvature: 1 / radiusM }]);
  fc.assert(
    fc.property(fc.double({ min: 0.4, max: 3, noNaN: true }), (x) => {
      const small = solve(twoAxleModel(NO_AIR, flat(smooth(60, 50).curvatureAt)), 60, [30]);
      const large = solve(
        twoAxleModel(NO_AIR, flat(smooth(60 * x, 50 * x).curvatureAt)),
        60 * x,
        [30 * x],
        { stepM: x },
      );
      for (const sM of [0, 30]) {
        const [a, b] = [at(small, sM), at(large, sM * x)];
        expectRelative(b.speedMps, a.speedMps * Math.sqrt(x), 1e-6);
        expectRelative(b.decelerationMps2, a.decelerationMps2, 1e-5);
        expectRelative(b.toSlowestS, a.toSlowestS * Math.sqrt(x) || 1e-300, 1e-5);
      }
    }),
    { numRuns: 10 },
  );
});

describe('hand-worked pressures of the GT example without air and engine, at the places themselves', () => {
  // The same smooth curvature with joints where the values stand, so that nothing is interpolated.
  const kappa = (s: number): number =>
    s <= 0 ? 0 : 0.02 * Math.sin((Math.PI * Math.min(s, 60)) / 120) ** 2;
  const ends = [0, 15, 30, 40, 50, 57, 60];
  const segments = ends.slice(1).map((end, i) => ({
    kind: 'clothoid' as const,
    lengthM: end - (ends[i] ?? 0),
    startCurvature: kappa(ends[i] ?? 0),
    endCurvature: kappa(end),
  }));
  const car: Car = {
    ...GT_CAR,
    aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 },
    engine: { ...GT_CAR.engine, brakingTorque: [{ rpm: 0, torqueNm: 0 }] },
    driver: { ...GT_CAR.driver, releaseNps: 1e9 },
    // The values are of loads that follow the brakes at once.
    pitchHz: 1e9,
  };
  const { points } = solveZone(car, {
    ...SMOOTH_CORNER,
    approachSpeedMps: 50,
    path: { segments, lengthM: 60, curvatureAt: kappa },
  });

  test.each([
    [0, 45.541, 447.59, 'front axle'],
    [15, 44.462, 436.99, 'front axle'],
    [30, 32.191, 316.39, 'rear axle'],
    [40, 17.328, 170.3, 'rear axle'],
    [50, 5.554, 54.59, 'rear axle'],
    [57, 0.614, 6.03, 'rear axle'],
  ])('%i m', (sM, bar, foot, limiter) => {
    const point = points.find((one) => Math.abs(one.sM - sM) < 1e-9);
    expect(Math.abs((point?.pressureFrontPa ?? 0) / 1e5 - bar)).toBeLessThan(1e-3);
    expect(Math.abs((point?.pedalForceN ?? 0) - foot)).toBeLessThan(1e-2);
    expect(point?.limiter).toBe(limiter);
  });

  test('nothing at the slowest point', () => {
    expect(points.at(-1)?.pedalForceN).toBe(0);
  });

  test('the impulse of the pressure is the same over time and over distance', () => {
    let [overTime, overDistance] = [0, 0];
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      if (a === undefined || b === undefined) continue;
      overTime += ((a.pressureFrontPa + b.pressureFrontPa) / 2) * (b.timeS - a.timeS);
      const perSpeed = (p: typeof a): number => p.pressureFrontPa / p.speedMps;
      overDistance += ((perSpeed(a) + perSpeed(b)) / 2) * (b.sM - a.sM);
    }
    expectRelative(overDistance, overTime, 1e-4);
  });
});

import { describe, expect, test } from 'vitest';
import { joinPath, type Path } from '../../src/corner/path.ts';
import { pointMassModel } from '../../src/corner/point-mass.ts';
import {
  brakeToSlowest,
  DEFAULT_STEP_M,
  type ProfilePoint,
} from '../../src/corner/speed-profile.ts';
import { type Road, twoAxleModel } from '../../src/corner/two-axle.ts';
import { expectRelative } from '../close-to.ts';
import { GT_AERO, GT_CHASSIS } from '../reference/gt-example.ts';

const G = 9.80665;
const A0 = 1.5 * G;
const CIRCLE = { massKg: 1, alongMps2: A0, acrossMps2: A0, downforceShare: 0, dragPerMetre: 0 };

function solve(
  curvatureAt: Path['curvatureAt'],
  slowestM: number,
  fromM: number,
  joints: readonly number[] = [],
  stepM = DEFAULT_STEP_M,
): ProfilePoint[] {
  return brakeToSlowest(pointMassModel(CIRCLE, curvatureAt), {
    slowestM,
    fromM,
    jointsM: joints,
    stepM,
    releaseNps: Number.POSITIVE_INFINITY,
    stopAboveMps: Number.POSITIVE_INFINITY,
  });
}

const speedAt = (points: readonly ProfilePoint[], sM: number): number =>
  points.find((point) => Math.abs(point.sM - sM) < 1e-9)?.speedMps ?? Number.NaN;

describe('manufactured solutions: curvature made for a given taper, a 1.5 g, apex radius 50 m, 60 m', () => {
  const k1 = 1 / 50;
  const w1 = A0 / k1;

  test('linear taper', () => {
    const w = (s: number): number => w1 + (A0 * (60 - s) ** 2) / 60;
    const kappa = (s: number): number => (A0 * Math.sqrt(1 - (1 - s / 60) ** 2)) / w(s) / 1;
    const points = solve(kappa, 60, 0, [30]);
    expectRelative(speedAt(points, 60), 27.12008, 1e-6);
    expectRelative(speedAt(points, 30), 30.921649, 1e-6);
    expectRelative(speedAt(points, 0), 40.22558, 1e-6);
    expectRelative(points[0]?.toSlowestS ?? 0, 1.913145, 1e-5);
  });

  test('cosine taper', () => {
    const w = (s: number): number =>
      w1 + ((4 * A0 * 60) / Math.PI) * (1 - Math.sin((Math.PI * s) / 120));
    const kappa = (s: number): number => (A0 * Math.sin((Math.PI * s) / 120)) / w(s);
    const points = solve(kappa, 60, 0, [30, 54]);
    expectRelative(speedAt(points, 0), 43.119115, 1e-6);
    expectRelative(speedAt(points, 30), 32.628825, 1e-6);
    expectRelative(speedAt(points, 54), 27.3739674, 1e-6);
  });
});

describe('smooth apex of radius 50 m over 60 m, 1.5 g', () => {
  const path = joinPath([{ kind: 'smooth', lengthM: 60, startCurvature: 0, endCurvature: 1 / 50 }]);
  const points = solve(path.curvatureAt, 60, 0, [59, 50]);

  test('releases linearly, slope 0.0220806177 of the grip a metre', () => {
    const share = (before: number): number =>
      (points.find((p) => Math.abs(p.sM - (60 - before)) < 1e-9)?.decelerationMps2 ?? 0) / A0;
    expectRelative(share(1), 0.022084, 1e-4);
    expectRelative(share(10), 0.224212, 1e-5);
  });

  test('enters at 43.060542 m/s', () => {
    expectRelative(speedAt(points, 0), 43.060542, 1e-6);
  });
});

describe('clothoid into its limit: dimensionless profile (two independent solvers)', () => {
  test.each([
    [0.5, [1.0530002, 1.1436348, 1.2549711, 1.3777864]],
    [1.0, [1.1708442, 1.4610357, 1.8541765, 2.3331956]],
  ])('sigma %f', (sigma, expected) => {
    // sigma = s sqrt(c): with c = 1e-4 the clothoid ends at 100 sigma metres; W sigma1 = w c s1 / a0.
    const c = 1e-4;
    const length = sigma * 100;
    const points = solve((s) => Math.max(0, c * s), length, 0, [
      0.75 * length,
      0.5 * length,
      0.25 * length,
    ]);
    [0.75, 0.5, 0.25, 0].forEach((share, i) => {
      const w = speedAt(points, share * length) ** 2;
      expectRelative((w * c * length) / A0, expected[i] ?? 0, 1e-6);
    });
  });
});

describe('straight line', () => {
  test('with drag and downforce: 119.546787 m from 75 to 25 m/s (closed form)', () => {
    // A 13.72931 m/s^2, B 0.002496 1/m; the pass runs back from a corner that allows just 25 m/s.
    const model = pointMassModel(
      {
        massKg: 1,
        alongMps2: 13.72931,
        acrossMps2: 13.72931,
        downforceShare: 0.002096 / 13.72931,
        dragPerMetre: 0.0004,
      },
      () => 0,
    );
    const corner = {
      ...model,
      cornerLimit: (s: number) => (s >= 119.546787 ? 625 : Number.POSITIVE_INFINITY),
      releaseLaw: () => null,
    };
    const points = brakeToSlowest(corner, {
      slowestM: 119.546787,
      fromM: 0,
      jointsM: [119.546787 / 2],
      stepM: DEFAULT_STEP_M,
      releaseNps: Number.POSITIVE_INFINITY,
      stopAboveMps: Number.POSITIVE_INFINITY,
    });
    expectRelative(points[0]?.speedMps ?? 0, 75, 1e-7);
    expectRelative(speedAt(points, 119.546787 / 2), 52.485779, 1e-7);
    expectRelative(points[0]?.toSlowestS ?? 0, 2.516624, 2e-7);
    expectRelative(speedAfter(points, 2.516624 / 2), 46.29757, 1e-7);
  });
});

/** Speed some time before the slowest point: the cubic in time through two points' speeds and decelerations. */
function speedAfter(points: readonly ProfilePoint[], leftS: number): number {
  const i = points.findIndex(({ toSlowestS }) => toSlowestS <= leftS);
  const [a, b] = [points[i - 1] as ProfilePoint, points[i] as ProfilePoint];
  const h = a.toSlowestS - b.toSlowestS;
  const u = (a.toSlowestS - leftS) / h;
  const [fromSlope, toSlope] = [-h * a.decelerationMps2, -h * b.decelerationMps2];
  const change = b.speedMps - a.speedMps;
  return (
    a.speedMps +
    fromSlope * u +
    (3 * change - 2 * fromSlope - toSlope) * u ** 2 +
    (fromSlope + toSlope - 2 * change) * u ** 3
  );
}

describe('two axles: the GT example without air forces, friction 1.4, smooth apex (two independent solvers)', () => {
  const tyre = {
    longitudinalFriction: 1.4,
    lateralFriction: 1.4,
    referenceLoadN: 3000,
    loadSensitivity: 0,
  };
  const car = {
    chassis: GT_CHASSIS,
    aero: { ...GT_AERO, dragAreaM2: 0, downforceAreaM2: 0 },
    frontTyre: tyre,
    rearTyre: tyre,
    trackM: 1.6,
    frontBrakeShare: 0.777329,
    frontDriveShare: 0,
    rollingResistance: 0,
    gripShare: 1,
  };
  const flat = (curvatureAt: Path['curvatureAt']): Road => ({
    curvatureAt,
    slopeAt: () => 0,
    bankAt: () => 0,
  });
  const kappa = (s: number): number => (s <= 0 ? 0 : 0.02 * Math.sin((Math.PI * s) / 120) ** 2);
  const points = brakeToSlowest(twoAxleModel(car, flat(kappa)), {
    slowestM: 60,
    fromM: -40,
    jointsM: [57, 50, 40, 30, 15, 0],
    stepM: DEFAULT_STEP_M,
    releaseNps: Number.POSITIVE_INFINITY,
    stopAboveMps: Number.POSITIVE_INFINITY,
  });

  test.each([
    [60, 26.200487],
    [30, 29.843319],
    [0, 39.854482],
    [-40, 50.7479],
  ])('speed at %i m', (s, speed) => {
    expectRelative(speedAt(points, s), speed, 1e-5);
  });

  test('time over the 60 m', () => {
    expectRelative(points.find((p) => Math.abs(p.sM) < 1e-9)?.toSlowestS ?? 0, 1.96935, 1e-5);
  });

  test('front axle first, rear axle late', () => {
    const limiters = [0, 15, 30, 40, 50, 57].map(
      (s) => points.find((p) => Math.abs(p.sM - s) < 1e-9)?.limiter,
    );
    expect(limiters).toEqual([
      'front axle',
      'front axle',
      'rear axle',
      'rear axle',
      'rear axle',
      'rear axle',
    ]);
  });

  test('releases linearly even into a clothoid: slope a / (mu h s1) = 0.0357143 a metre', () => {
    const clothoid = (s: number): number => Math.max(0, Math.min(1, s / 60)) * 0.02;
    const entry = brakeToSlowest(twoAxleModel(car, flat(clothoid)), {
      slowestM: 60,
      fromM: 0,
      jointsM: [59.9, 59],
      stepM: 0.05,
      releaseNps: Number.POSITIVE_INFINITY,
      stopAboveMps: Number.POSITIVE_INFINITY,
    });
    const share = (before: number): number =>
      (entry.find((p) => Math.abs(p.sM - (60 - before)) < 1e-9)?.decelerationMps2 ?? 0) /
      (1.4 * G) /
      before;
    expectRelative(share(0.1), 0.03554, 1e-3);
    expectRelative(share(1), 0.03403, 1e-3);
  });
});

describe('speed at which a corner can be driven at all', () => {
  const tyre = (loadSensitivity: number) => ({
    longitudinalFriction: 1.6,
    lateralFriction: 1.6,
    referenceLoadN: 1500,
    loadSensitivity,
  });
  const car = (loadSensitivity: number) => ({
    chassis: { ...GT_CHASSIS, massKg: 950, cgHeightM: 0.33 },
    aero: { ...GT_AERO, downforceAreaM2: 4.2, frontShare: GT_CHASSIS.cgToRearM / 2.6 },
    frontTyre: tyre(loadSensitivity),
    rearTyre: tyre(loadSensitivity),
    trackM: 1.6,
    frontBrakeShare: 0.7,
    frontDriveShare: 0,
    rollingResistance: 0,
    gripShare: 1,
  });
  const limitOf = (loadSensitivity: number, radiusM: number): number =>
    twoAxleModel(car(loadSensitivity), {
      curvatureAt: () => 1 / radiusM,
      slopeAt: () => 0,
      bankAt: () => 0,
    }).cornerLimit(0);

  test('with downforce: w = mu g / (kappa - mu rho ClA / (2 m))', () => {
    const lift = (0.5 * 1.2 * 4.2) / 950;
    for (const radius of [20, 80, 160])
      expectRelative(limitOf(0, radius), (1.6 * G) / (1 / radius - 1.6 * lift), 1e-9);
  });

  test('none where the grip of the downforce outgrows the corner', () => {
    expect(limitOf(0, 260)).toBe(Number.POSITIVE_INFINITY);
  });

  test('friction that falls above a light load lowers it, steadily and for every radius', () => {
    for (let radius = 20; radius < 200; radius += 5) {
      const [none, some, more] = [
        limitOf(0, radius),
        limitOf(-0.05, radius),
        limitOf(-0.1, radius),
      ];
      expect(some).toBeLessThan(none);
      expect(more).toBeLessThan(some);
      expect(limitOf(-0.07, radius + 5)).toBeGreaterThan(limitOf(-0.07, radius));
    }
  });
});

import { describe, expect, test } from 'vitest';
import type { BrakingModel } from '../../src/corner/braking-model.ts';
import { type PointMass, pointMassModel } from '../../src/corner/point-mass.ts';
import { brakeToSlowest, type ProfilePoint } from '../../src/corner/speed-profile.ts';
import { twoAxleModel } from '../../src/corner/two-axle.ts';
import { expectRelative } from '../close-to.ts';
import { GT_AERO, GT_CHASSIS } from '../reference/gt-example.ts';

/** Closed forms of braking on a friction ellipse, worked out by hand: see each test for its formula. */
const G = 9.80665;
const NONE = Number.POSITIVE_INFINITY;

/** Backward from a given speed: the corner's own limit is asked only there. */
function from(model: BrakingModel, slowestM: number, speedMps: number): BrakingModel {
  return {
    ...model,
    cornerLimit: (sM) => (sM >= slowestM ? speedMps ** 2 : NONE),
    releaseLaw: () => null,
  };
}

function solve(model: BrakingModel, slowestM: number, joints: readonly number[], stepM = 1) {
  return brakeToSlowest(model, {
    slowestM,
    fromM: 0,
    // The first stretch has growing steps: a joint at once makes the rest even.
    jointsM: [slowestM - 1e-3, ...joints],
    stepM,
    stopAboveMps: NONE,
    releaseNps: NONE,
  });
}

const at = (points: readonly ProfilePoint[], sM: number): ProfilePoint =>
  points.find((point) => Math.abs(point.sM - sM) < 1e-9) as ProfilePoint;

const circle = (alongG: number, acrossG: number, more: Partial<PointMass> = {}): PointMass => ({
  massKg: 1,
  alongMps2: alongG * G,
  acrossMps2: acrossG * G,
  downforceShare: 0,
  dragPerMetre: 0,
  ...more,
});

test('straight, 80 to 20 m/s at 1.5 g: 203.943243 m, 4.078864852 s', () => {
  const points = solve(
    from(
      pointMassModel(circle(1.5, 1.5), () => 0),
      203.943243,
      20,
    ),
    203.943243,
    [],
  );
  expectRelative(at(points, 0).speedMps, 80, 1e-8);
  expectRelative(at(points, 0).toSlowestS, 4.078864852, 1e-7);
});

describe('arc of 60 m', () => {
  const arc = () => 1 / 60;

  test('circle of 1.5 g from 80 degrees: w = (a / k) sin(th0 - 2 k s), braking grows along the arc', () => {
    const points = solve(
      from(pointMassModel(circle(1.5, 1.5), arc), 40, 7.45019),
      40,
      [10, 20, 30],
    );
    expectRelative(at(points, 30).speedMps, 18.4569789, 1e-6);
    expectRelative(at(points, 20).speedMps, 24.2551617, 1e-6);
    expectRelative(at(points, 10).speedMps, 27.7704986, 1e-6);
    expectRelative(at(points, 0).speedMps, 29.4820258, 1e-6);
    expectRelative(at(points, 10).decelerationMps2, 7.153666, 2e-6);
    expectRelative(at(points, 30).decelerationMps2, 13.570094, 2e-6);
  });

  test('ellipse of 1.4 g along and 1.6 g across from 70 degrees', () => {
    const points = solve(from(pointMassModel(circle(1.4, 1.6), arc), 30, 17.8864195), 30, [15]);
    expectRelative(at(points, 15).speedMps, 25.7860369, 1e-6);
    expectRelative(
      at(points, 0).speedMps ** 2,
      1.6 * G * 60 * Math.sin((70 * Math.PI) / 180),
      1e-6,
    );
  });

  test('with downforce: w = c0 + R sin(th0 - 2 sqrt(q) s)', () => {
    const car = circle(1.4, 1.4, { downforceShare: 0.00144 / G });
    const model = pointMassModel(car, arc);
    expectRelative(Math.sqrt(model.cornerLimit(0)), 30.6122791, 1e-8);
    const points = solve(from(model, 40, 5.1673448), 40, [10, 20]);
    expectRelative(at(points, 20).speedMps, 23.5393384, 1e-6);
    expectRelative(at(points, 10).speedMps, 27.5281639, 1e-6);
    expectRelative(at(points, 0).speedMps ** 2, 0.95 * 30.6122791 ** 2, 1e-5);
  });
});

test('an arc on which downforce outgrows the corner: w = R cosh(.. - 2 sqrt(q) s) - c', () => {
  const lift = (1.2 * 4.5) / (2 * 660);
  const car = circle(1.7, 1.7, { downforceShare: lift / G });
  const points = solve(
    from(
      pointMassModel(car, () => 1 / 400),
      50,
      35.9315046,
    ),
    50,
    [20],
  );
  expectRelative(at(points, 20).speedMps, 56.2777337, 1e-6);
  expectRelative(at(points, 0).speedMps, 70, 1e-6);
});

describe('radius 120 m that tightens to 60 m, circle of 1.5 g', () => {
  const longest = 62.8318531;
  const model = from(
    pointMassModel(circle(1.5, 1.5), () => 1 / 120),
    longest,
    29.708559,
  );
  const points = solve(model, longest, [longest - 30]);

  test('30 m before the joint', () => {
    expectRelative(at(points, longest - 30).speedMps, 38.825938, 1e-6);
    expectRelative(at(points, longest - 30).decelerationMps2 / (1.5 * G), 0.520296, 1e-5);
  });

  // Steps of 1 cm: at the limit the error falls by 2.8 with each halving of the step.
  test('62.83 m before it the arc uses all grip; the time is a lemniscate integral', () => {
    const fine = solve(model, longest, [], 0.01);
    expectRelative(at(fine, 0).speedMps, 42.014248, 1e-6);
    expectRelative(at(fine, 0).toSlowestS, 1.668242, 5e-7);
    // t = I / (2 sqrt(a0 k)), I from 30 degrees to 90 of d(th) / sqrt(sin th).
    const integral = at(fine, 0).toSlowestS * 2 * Math.sqrt((1.5 * G) / 120);
    expectRelative(integral, 1.168165683, 5e-7);
  });

  // I from nothing to 90 degrees is the lemniscate constant: down to 0.01 degrees, less 2 sqrt(th) of the rest.
  test('a whole quarter takes the lemniscate constant', () => {
    const rest = (0.01 * Math.PI) / 180;
    const lengthM = 60 * (Math.PI / 2 - rest);
    const slowest = Math.sqrt(1.5 * G * 120 * Math.sin(rest));
    const quarter = from(
      pointMassModel(circle(1.5, 1.5), () => 1 / 120),
      lengthM,
      slowest,
    );
    const { toSlowestS } = at(solve(quarter, lengthM, [], 0.01), 0);
    const integral = toSlowestS * 2 * Math.sqrt((1.5 * G) / 120) + 2 * Math.sqrt(rest);
    expectRelative(integral, 2.6220575543, 2e-6);
  });
});

test('published single-seater data, friction 1.5: 4.2032 g at 60 m/s and 2.1758 g at 30 m/s, drag in it', () => {
  // Perantoni and Limebeer, Vehicle System Dynamics 52(5), 2014: 660 kg, ClA 4.5 m^2, CdA 1.35 m^2, air 1.2 kg/m^3.
  const perSpeedSquared = (0.5 * 1.2) / 660;
  const model = pointMassModel(
    circle(1.5, 1.5, {
      massKg: 660,
      downforceShare: (perSpeedSquared * 4.5) / G,
      dragPerMetre: perSpeedSquared * 1.35,
    }),
    () => 0,
  );
  expectRelative(model.limit(0, 3600).decelerationMps2 / G, 4.2032, 1e-4);
  expectRelative(model.limit(0, 900).decelerationMps2 / G, 2.1758, 1e-4);
  expectRelative(model.decelerationMps2(0, 3600, 0) / G, 0.4505, 2e-4);
});

describe('order of convergence', () => {
  const errors = (error: (stepM: number) => number, steps: readonly number[]): number[] =>
    steps.map((stepM) => Math.abs(error(stepM)));

  test('away from the limit of grip each halving of the step divides the error by about 16', () => {
    const model = pointMassModel(circle(1.5, 1.5), () => 1 / 60);
    const exact = (1.5 * G * 60 * Math.sin((40 * Math.PI) / 180)) ** 0.5;
    // From 2 degrees up to 40 degrees of the circle.
    const lengthM = (60 * (38 * Math.PI)) / 180 / 2;
    const end = (1.5 * G * 60 * Math.sin((2 * Math.PI) / 180)) ** 0.5;
    const [coarse = 0, middle = 0, fine = 0] = errors(
      (stepM) =>
        at(solve(from(model, lengthM, end), lengthM, [], lengthM * stepM), 0).speedMps - exact,
      [1 / 4, 1 / 8, 1 / 16],
    );
    for (const ratio of [coarse / middle, middle / fine]) {
      expect(ratio).toBeGreaterThan(13);
      expect(ratio).toBeLessThan(20);
    }
  });

  test('where the arc ends at the limit of the point mass, only by about 2.8', () => {
    const model = pointMassModel(circle(1.5, 1.5), () => 1 / 120);
    const lengthM = 20 * Math.PI;
    const start = Math.sqrt(1.5 * G * 60);
    const exact = Math.sqrt(1.5 * G * 120);
    const found = errors(
      (stepM) => at(solve(from(model, lengthM, start), lengthM, [], stepM), 0).speedMps - exact,
      [4, 2, 1, 0.5, 0.25],
    );
    const ratio = ((found[0] as number) / (found[4] as number)) ** (1 / 4);
    expect(ratio, found.join(' ')).toBeGreaterThan(2.2);
    expect(ratio, found.join(' ')).toBeLessThan(4.5);
  });
});

test('energy: what the car loses is the work of brakes, drag, engine, rolling and slope, to 1e-6', () => {
  const tyre = {
    longitudinalFriction: 1.4,
    lateralFriction: 1.4,
    referenceLoadN: 3000,
    loadSensitivity: -0.05,
  };
  const curvature = (s: number): number =>
    s <= 80 ? 0 : 0.02 * Math.sin((Math.PI * (s - 80)) / 120) ** 2;
  const engineN = (w: number): number => 300 + 8 * Math.sqrt(w);
  const model = twoAxleModel(
    {
      chassis: GT_CHASSIS,
      aero: GT_AERO,
      frontTyre: tyre,
      rearTyre: tyre,
      trackM: 1.6,
      frontBrakeShare: 0.777329,
      frontDriveShare: 0,
      rollingResistance: 0.015,
      gripShare: 0.95,
    },
    { curvatureAt: curvature, slopeAt: () => 0.03, bankAt: () => 0 },
    (_, w) => engineN(w),
  );
  const points = brakeToSlowest(model, {
    slowestM: 135,
    fromM: 0,
    jointsM: [80],
    stepM: 0.5,
    stopAboveMps: NONE,
    releaseNps: NONE,
  });
  // Three-point Gauss on the cubic through the squared speeds and their slopes at both ends of each step.
  const nodes = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
  const weights = [5 / 18, 8 / 18, 5 / 18];
  let work = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as ProfilePoint, points[i] as ProfilePoint];
    const h = b.sM - a.sM;
    nodes.forEach((node, j) => {
      const t = (1 + node) / 2;
      const [wa, wb] = [a.speedMps ** 2, b.speedMps ** 2];
      const [ma, mb] = [-2 * h * a.decelerationMps2, -2 * h * b.decelerationMps2];
      const w =
        wa + ma * t + (3 * (wb - wa) - 2 * ma - mb) * t ** 2 + (2 * (wa - wb) + ma + mb) * t ** 3;
      const drag = 0.5 * 1.2 * 1.0 * w;
      const rolling = 0.015 * (1250 * G + 0.5 * 1.2 * 3.0 * w);
      const slope = 1250 * G * 0.03;
      const brakes = model.limit(a.sM + t * h, w).brakeForceN;
      work += (weights[j] as number) * h * (brakes + drag + engineN(w) + rolling + slope);
    });
  }
  const [first, last] = [points[0] as ProfilePoint, points[points.length - 1] as ProfilePoint];
  expect(points.some(({ limiter }) => limiter === 'rear axle')).toBe(true);
  expectRelative(work, 0.5 * 1250 * (first.speedMps ** 2 - last.speedMps ** 2), 1e-6);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Axles } from '../../src/car/chassis.ts';
import { driveLimits } from '../../src/corner/drive-limits.ts';
import type { Road, TwoAxleCar } from '../../src/corner/two-axle.ts';
import { expectRelative } from '../close-to.ts';
import { GT_AERO, GT_CHASSIS } from '../reference/gt-example.ts';

const G = 9.80665;
const MU = 1.4;
const tyre = {
  longitudinalFriction: MU,
  lateralFriction: MU,
  referenceLoadN: 3000,
  loadSensitivity: 0,
};
const driveLimitsN = (one: TwoAxleCar, on: Road, sM: number, w: number): Axles =>
  driveLimits(one, on)(sM, w);
const car: TwoAxleCar = {
  chassis: GT_CHASSIS,
  aero: { ...GT_AERO, downforceAreaM2: 0 },
  frontTyre: tyre,
  rearTyre: tyre,
  trackM: 1.6,
  frontBrakeShare: 0.7,
  frontDriveShare: 0,
  rollingResistance: 0,
  gripShare: 1,
};
const road = (curvature: number): Road => ({
  curvatureAt: () => curvature,
  slopeAt: () => 0,
  bankAt: () => 0,
});

describe('traction on the straight: Gillespie, Fundamentals of Vehicle Dynamics, ch. 2', () => {
  // Wheelbase 2.6 m, centre of gravity 1.35 m behind the front axle and 0.45 m high, 1250 kg.
  test('rear-driven: F / W = mu a / (L - mu h)', () => {
    const { rear, front } = driveLimitsN(car, road(0), 0, 900);
    expectRelative(rear / (1250 * G), (MU * 1.35) / (2.6 - MU * 0.45), 1e-12);
    // The front wheels leave the road at W b / h.
    expectRelative(front / (1250 * G), 1.25 / 0.45, 1e-12);
  });

  test('front-driven: F / W = mu b / (L + mu h)', () => {
    const { front, rear } = driveLimitsN({ ...car, frontDriveShare: 1 }, road(0), 0, 900);
    expectRelative(front / (1250 * G), (MU * 1.25) / (2.6 + MU * 0.45), 1e-12);
    expect(rear).toBe(Number.POSITIVE_INFINITY);
  });

  test('all wheels, the drive shared as the loads are at the limit: F / W = mu', () => {
    // Front load share under 1.4 g: (b - mu h) / L.
    const share = (1.25 - MU * 0.45) / 2.6;
    const { front, rear } = driveLimitsN({ ...car, frontDriveShare: share }, road(0), 0, 900);
    expectRelative(front / (1250 * G), MU, 1e-12);
    expectRelative(rear / (1250 * G), MU, 1e-12);
  });

  test('downforce at 50 m/s adds to the load of its axle', () => {
    const winged = { ...car, aero: GT_AERO };
    const down = 0.5 * 1.2 * 3 * 0.58 * 2500;
    const load = (1250 * G * 1.35) / 2.6 + down;
    expectRelative(
      driveLimitsN(winged, road(0), 0, 2500).rear,
      (MU * load) / (1 - (MU * 0.45) / 2.6),
      1e-12,
    );
  });
});

describe('in a corner', () => {
  test('the driven axle stays on its circle, the other keeps its lateral force', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.98, noNaN: true }), (use) => {
        // Lateral acceleration `use` times mu g at a radius of 50 m.
        const w = use * MU * G * 50;
        const { front, rear } = driveLimitsN(car, road(1 / 50), 0, w);
        const lateral = {
          front: 1250 * use * MU * G * (1.25 / 2.6),
          rear: 1250 * use * MU * G * (1.35 / 2.6),
        };
        const load = (f: number): { front: number; rear: number } => ({
          front: (1250 * G * 1.25 - f * 0.45) / 2.6,
          rear: (1250 * G * 1.35 + f * 0.45) / 2.6,
        });
        expectRelative(Math.hypot(rear, lateral.rear), MU * load(rear).rear, 1e-9);
        expectRelative(lateral.front, MU * load(front).front, 1e-9);
      }),
    );
  });

  test('at the limit of the corner nothing is left for the driven axle of a neutral car that only corners in front', () => {
    const { front } = driveLimitsN(car, road(1 / 50), 0, MU * G * 50);
    expect(front).toBeLessThan(1e-6);
  });

  test('friction that falls with load: the tyres carry mu of the load they then have', () => {
    const sensitive = { ...tyre, loadSensitivity: -0.1 };
    const { rear } = driveLimitsN(
      { ...car, frontTyre: sensitive, rearTyre: sensitive },
      road(0),
      0,
      900,
    );
    const load = (1250 * G * 1.35 + rear * 0.45) / 2.6;
    expectRelative(rear, MU * (1 - (0.1 * (load / 2 - 3000)) / 3000) * load, 1e-4);
  });

  test('a share of the grip is a share of the force', () => {
    const half = driveLimitsN({ ...car, gripShare: 0.5 }, road(0), 0, 900).rear;
    expectRelative(half / (1250 * G), (0.7 * 1.35) / (2.6 - 0.7 * 0.45), 1e-12);
  });
});

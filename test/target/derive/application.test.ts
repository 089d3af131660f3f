import { describe, expect, test } from 'vitest';
import type { BrakingModel } from '../../../src/corner/braking-model.ts';
import { axleLimitsUnderLoadN, twoAxleModel } from '../../../src/corner/two-axle.ts';
import { applyBrakes } from '../../../src/target/derive/application.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_WITHOUT_AIR as CAR, GT_FRONT_BRAKE_SHARE as PHI } from '../../reference/gt-example.ts';

const G = 9.80665;
const ROAD = { curvatureAt: () => 0, slopeAt: () => 0, bankAt: () => 0 };
const FRONT_N = (1250 * G * 1.25) / 2.6;
const REAR_N = (1250 * G * 1.35) / 2.6;

test('minimum-jerk rise to 12 m/s^2 in 0.25 s: v falls by D t / 2, the way by D t^2 / 7', () => {
  const even: BrakingModel = {
    limit: () => ({ decelerationMps2: 12, brakeForceN: 12, limiter: 'grip' }),
    decelerationMps2: (_, __, forceN) => forceN,
    cornerLimit: () => Number.POSITIVE_INFINITY,
    releaseLaw: () => null,
  };
  const last = applyBrakes(even, { approachSpeedMps: 50, riseS: 0.25, pitch: null }, 0).at(-1);
  const held = (last?.timeS ?? 0) - 0.25;
  expect(held).toBeLessThan(0.004);
  const risen = 50 - (12 * 0.25) / 2;
  expectRelative(last?.speedMps ?? 0, risen - 12 * held, 1e-6);
  expectRelative(
    last?.sM ?? 0,
    50 * 0.25 - (12 * 0.25 ** 2) / 7 + risen * held - 6 * held ** 2,
    // Steps of 4 ms, of second order.
    1e-5,
  );
});

describe('while the load is on its way', () => {
  test('each axle carries what it has by then, less what the engine takes of it', () => {
    const place = { sM: 0, w: 900, engineN: 2000, transferN: 1000 };
    const limit = (frontDriveShare: number, frontBrakeShare = PHI): number =>
      axleLimitsUnderLoadN({ ...CAR, frontDriveShare, frontBrakeShare }, ROAD, place);
    expectRelative(limit(0), (1.4 * (FRONT_N + 1000)) / PHI, 1e-9);
    expectRelative(limit(1), (1.4 * (FRONT_N + 1000) - 2000) / PHI, 1e-9);
    expectRelative(limit(0, 0.3), (1.4 * (REAR_N - 1000) - 2000) / 0.7, 1e-9);
  });

  test('the front limit grows with it: T = c / (1 - q) (1 - exp(-rate (1 - q) t)), the engine in c', () => {
    const engineN = 2000;
    const hz = 2;
    const points = applyBrakes(
      twoAxleModel(CAR, ROAD, () => engineN),
      {
        approachSpeedMps: 60,
        riseS: 1e-6,
        pitch: { car: CAR, road: ROAD, engineBraking: () => engineN, hz },
      },
      0,
    );
    const q = (1.4 * 0.45) / (2.6 * PHI);
    const c = (((1.4 * FRONT_N) / PHI + engineN) * 0.45) / 2.6;
    const rate = 2 * Math.PI * hz * (1 - q);
    // Until the rear axle, which the engine brakes too, is the one that limits.
    for (const at of [0.04, 0.072]) {
      const transfer = (c / (1 - q)) * (1 - Math.exp(-rate * at));
      const point = points.find(({ timeS }) => Math.abs(timeS - at) < 1e-9);
      expectRelative(point?.brakeForceN ?? 0, (1.4 * (FRONT_N + transfer)) / PHI, 5e-3);
    }
  });
});

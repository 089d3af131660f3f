import { describe, expect, test } from 'vitest';
import type { Car } from '../../../src/car/car.ts';
import { joinPath } from '../../../src/corner/path.ts';
import { easeShare } from '../../../src/target/derive/bump-easing.ts';
import { zoneSetting } from '../../../src/target/derive/zone-model.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

const G = 9.80665;

// Hand-worked: N0 3500 N at each front wheel, r 0.31 m, mu 1.5, J 1.2 kg m^2; a bump of depth 0.3 and 0.05 s takes
// 12.951233 rad/s from the wheel at the limit of grip and 4.434847 rad/s with 15 % to spare.
describe('how much a bump asks to ease', () => {
  const LOAD_N = 7000;
  // So heavy behind that the front axle carries 7000 N.
  const massKg = 1e6;
  const cgToRearM = (LOAD_N * 2.6) / (massKg * G);
  const tyre = { ...GT_CAR.tyres.front, longitudinalFriction: 1.5, lateralFriction: 1.5 };
  const wheel = { inertiaKgm2: 1.2, slidingShare: 1 };
  const car: Car = {
    ...GT_CAR,
    aero: { ...GT_CAR.aero, dragAreaM2: 0, downforceAreaM2: 0 },
    chassis: {
      ...GT_CAR.chassis,
      massKg,
      cgToRearM,
      cgToFrontM: 2.6 - cgToRearM,
      cgHeightM: 0,
    },
    brakes: {
      ...GT_CAR.brakes,
      balanceBarFront: 1,
      front: { ...GT_CAR.brakes.front, wheelRadiusM: 0.31 },
    },
    tyres: { front: tyre, rear: tyre },
    wheels: { front: wheel, rear: wheel },
  };
  const path = joinPath([{ kind: 'constant', lengthM: 500, startCurvature: 0, endCurvature: 0 }]);
  const setting = zoneSetting(car, { ...SMOOTH_CORNER, path });
  const easeAt = (speedMps: number, depth = 0.3): number =>
    easeShare(
      setting,
      { atM: 10, lengthM: 0.05 * speedMps, depth },
      { speedMps, brakeForceN: 1.5 * LOAD_N, engineN: 0 },
    );

  test('15 % where those leave just a twentieth of slip: 4.434847 x 0.31 / 0.05 = 27.496 m/s', () => {
    expect(easeAt(27.55)).toBe(0.15);
    expect(easeAt(27.45)).toBe(0.16);
  });

  test('nothing where the whole limit leaves that: from 12.951233 x 0.31 / 0.05 = 80.298 m/s on', () => {
    expect(easeAt(80.35)).toBe(0);
    expect(easeAt(80.25)).toBe(0.01);
  });

  test('never more than its depth, and nothing for none', () => {
    expect(easeAt(5)).toBeLessThanOrEqual(0.3);
    expect(easeAt(5)).toBeGreaterThan(0.25);
    expect(easeAt(27, 0)).toBe(0);
  });
});

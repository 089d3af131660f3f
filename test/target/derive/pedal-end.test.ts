import { expect, test } from 'vitest';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

// 18747.67 + 5370.39 N at 700 N of foot, worked by hand: at 400 N four sevenths of it.
const MOST_N = ((18747.67 + 5370.39) * 400) / 700;

test('brakes that end before the grip does brake all they have, from further away', () => {
  const whole = deriveTarget(GT_CAR, SMOOTH_CORNER);
  const { zone, keys } = deriveTarget({ ...GT_CAR, fullScalePedalForceN: 400 }, SMOOTH_CORNER);
  const full = zone.points.filter(({ level }) => level > 1 - 1e-6);
  expect(full.length).toBeGreaterThan(10);
  for (const { brakeForceN } of full) expectRelative(brakeForceN, MOST_N, 1e-5);
  expect(Math.max(...zone.points.map(({ level }) => level))).toBeLessThan(1 + 1e-9);
  expect(zone.brakePointM).toBeLessThan(whole.zone.brakePointM - 5);
  expectRelative(keys.slowest.speedMps, whole.keys.slowest.speedMps, 1e-9);
  // All of the pedal is still the plateau.
  expect(keys.startOfRelease.sM).toBeGreaterThanOrEqual(full.at(-1)?.sM ?? Number.NaN);
});

test('of turning parts the road gets so much less: (B - k (R + others)) / (1 + k)', () => {
  const car = { ...GT_CAR, fullScalePedalForceN: 400, rotatingShare: 0.06 };
  const { zone } = deriveTarget(car, SMOOTH_CORNER);
  const full = zone.points.filter(({ level }) => level > 1 - 1e-6);
  expect(full.length).toBeGreaterThan(10);
  for (const { brakeForceN, accelXMps2 } of full)
    expectRelative(brakeForceN - 0.06 * 1250 * accelXMps2, MOST_N, 1e-5);
});

import { describe, expect, test } from 'vitest';
import { accelerate, type DrivePoint, type ForwardPass } from '../../src/corner/accelerate.ts';
import type { DriveModel } from '../../src/corner/drive-model.ts';
import { expectRelative } from '../close-to.ts';

/** Closed forms of accelerating, worked out by hand: see each test for its formula. */
const NONE = Number.POSITIVE_INFINITY;

const model = (more: Partial<DriveModel>): DriveModel => ({
  accelerationMps2: () => 0,
  ceiling: () => NONE,
  upshiftSquared: () => NONE,
  shiftS: 0.1,
  ...more,
});

const pass = (more: Partial<ForwardPass>): ForwardPass => ({
  fromM: 0,
  fromMps: 20,
  gear: 2,
  toM: 200,
  jointsM: [],
  stepM: 1,
  ...more,
});

const end = (points: readonly DrivePoint[]): DrivePoint => points.at(-1) as DrivePoint;

test('constant force of 5 m/s^2: w = w0 + 2 a s, t = (v - v0) / a', () => {
  const last = end(accelerate(model({ accelerationMps2: () => 5 }), pass({})).points);
  const v = Math.sqrt(400 + 2000);
  expectRelative(last.speedMps, v, 1e-12);
  expectRelative(last.timeS, (v - 20) / 5, 1e-6);
});

test('constant power of 200 kW on 1250 kg: v^3 = v0^3 + 3 P s / m, t = m (v^2 - v0^2) / (2 P)', () => {
  const power = 200_000 / 1250;
  const driven = accelerate(
    model({ accelerationMps2: (_, w) => power / Math.sqrt(w) }),
    pass({}),
  ).points;
  const v = Math.cbrt(8000 + 3 * power * 200);
  expectRelative(end(driven).speedMps, v, 1e-8);
  expectRelative(end(driven).timeS, (v * v - 400) / (2 * power), 1e-6);
});

describe('constant power against drag, c = 0.00048 1/m', () => {
  // v^3 = P/(m c) - (P/(m c) - v0^3) exp(-3 c s)
  const power = 200_000 / 1250;
  const against = model({ accelerationMps2: (_, w) => power / Math.sqrt(w) - 0.00048 * w });
  const exact = (s: number): number =>
    Math.cbrt(power / 0.00048 - (power / 0.00048 - 8000) * Math.exp(-3 * 0.00048 * s));

  test('over 400 m', () => {
    expectRelative(end(accelerate(against, pass({ toM: 400 })).points).speedMps, exact(400), 1e-8);
  });

  test('far away it comes to the top speed, the cube root of power over drag', () => {
    const last = end(accelerate(against, pass({ toM: 15_000, stepM: 5 })).points);
    expectRelative(last.speedMps, Math.cbrt(power / 0.00048), 1e-8);
    expect(Math.abs(last.accelerationMps2)).toBeLessThan(1e-6);
  });

  test('each halving of the step divides the error by about 16', () => {
    const error = (stepM: number): number =>
      Math.abs(end(accelerate(against, pass({ toM: 320, stepM })).points).speedMps - exact(320));
    for (const ratio of [error(16) / error(8), error(8) / error(4)]) {
      expect(ratio).toBeGreaterThan(12);
      expect(ratio).toBeLessThan(22);
    }
  });
});

describe('upshifts', () => {
  // 4 m/s^2 in gear, nothing in between, gear 2 up to 25 m/s.
  const shifting = model({
    accelerationMps2: (_, __, gear) => (gear === null ? 0 : 4),
    upshiftSquared: (gear) => (gear === 2 ? 625 : NONE),
    shiftS: 0.2,
  });

  test('begins at its speed and takes its time without drive', () => {
    const { points, upshifts } = accelerate(shifting, pass({ toM: 100 }));
    // 20 to 25 m/s takes 28.125 m and 1.25 s; the shift 5 m and 0.2 s; 66.875 m are left.
    expect(upshifts).toHaveLength(1);
    expectRelative(upshifts[0]?.atM ?? 0, 28.125, 1e-9);
    const v = Math.sqrt(625 + 2 * 4 * 66.875);
    expectRelative(end(points).speedMps, v, 1e-9);
    expectRelative(end(points).timeS, 1.25 + 0.2 + (v - 25) / 4, 1e-6);
    expect(end(points).gear).toBe(3);
  });

  test('two at once where the gear was far too low', () => {
    const low = model({ ...shifting, upshiftSquared: (gear) => (gear < 4 ? 100 : NONE) });
    const { upshifts } = accelerate(low, pass({}));
    expect(upshifts.map(({ fromGear, toGear }) => [fromGear, toGear])).toEqual([
      [2, 3],
      [3, 4],
    ]);
    // Both at 20 m/s, 0.2 s apart.
    expectRelative(upshifts[1]?.atM ?? 0, 4, 1e-9);
  });

  test('one that the end of the pass cuts off ends there', () => {
    const { points } = accelerate(shifting, pass({ toM: 30 }));
    expect(end(points).sM).toBe(30);
    expectRelative(end(points).timeS, 1.25 + 1.875 / 25, 1e-6);
  });

  test('against drag while the clutch is open: v = v0 / (1 + c v0 t)', () => {
    const slowed = model({
      ...shifting,
      accelerationMps2: (_, w, gear) => (gear === null ? -0.001 * w : 4),
      upshiftSquared: (gear) => (gear === 2 ? 400 : NONE),
    });
    const { points } = accelerate(slowed, pass({}));
    const engaged = points.find(({ timeS }) => Math.abs(timeS - 0.2) < 1e-9);
    expectRelative(engaged?.speedMps ?? 0, 20 / (1 + 0.001 * 20 * 0.2), 1e-6);
    expectRelative(engaged?.sM ?? 0, Math.log(1 + 0.001 * 20 * 0.2) / 0.001, 1e-6);
  });
});

test('never above the ceiling, and places asked for are met', () => {
  const capped = model({
    accelerationMps2: () => 6,
    ceiling: (sM) => (sM < 50 ? 484 : 900),
  });
  const { points } = accelerate(capped, pass({ jointsM: [33.3, 50] }));
  for (const { sM, speedMps } of points)
    expect(speedMps ** 2).toBeLessThanOrEqual((sM < 50 ? 484 : 900) + 1e-9);
  expect(points.some(({ sM }) => sM === 33.3)).toBe(true);
  expect(end(points).speedMps).toBe(30);
});

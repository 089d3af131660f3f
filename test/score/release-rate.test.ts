import { expect, test } from 'vitest';
import { rateAt, releaseSpeed, steepestFall } from '../../src/score/release-rate.ts';

/** Falls by 50 % per second, then rises by 20 % per second, at 1 kHz. */
const levels = Float64Array.from({ length: 201 }, (_, i) =>
  i <= 100 ? 0.8 - 0.0005 * i : 0.75 + 0.0002 * (i - 100),
);

test('rates are levels per second, at the ends too', () => {
  expect(rateAt(levels, 0)).toBeCloseTo(-0.5, 9);
  expect(rateAt(levels, 50)).toBeCloseTo(-0.5, 9);
  expect(rateAt(levels, 200)).toBeCloseTo(0.2, 9);
  expect(rateAt(levels, 100)).toBeCloseTo((-0.5 + 0.2) / 2, 9);
});

test('a single point has no rate', () => {
  expect(rateAt(Float64Array.of(0.4), 0)).toBe(0);
});

test('the steepest fall is positive, and negative where it only rises', () => {
  expect(steepestFall(levels, { from: 10, to: 190 })).toBeCloseTo(0.5, 9);
  expect(steepestFall(levels, { from: 110, to: 190 })).toBeCloseTo(-0.2, 9);
});

test('the speed of release covers the window, both ends included', () => {
  const speed = releaseSpeed(levels, { from: 20, to: 60 });
  expect(speed.length).toBe(41);
  for (const value of speed) expect(value).toBeCloseTo(0.5, 9);
});

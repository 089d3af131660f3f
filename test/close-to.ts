import { expect } from 'vitest';

/** Fails unless `actual` is within the relative tolerance of `expected`. */
export function expectRelative(actual: number, expected: number, tolerance: number): void {
  const error = Math.abs(actual - expected) / Math.abs(expected);
  expect(error, `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
}

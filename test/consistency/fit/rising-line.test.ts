import { expect, test } from 'vitest';
import { risingLine } from '../../../src/consistency/fit/rising-line.ts';
import { expectRelative } from '../../close-to.ts';
import { NORRIS } from '../../reference/norris.ts';

const { x, y, certified } = NORRIS;
const DEGREES = x.length - 2;

test('a line that rises from above zero is the free one', () => {
  const line = risingLine(
    x,
    y.map((value) => value + 1),
  );
  expectRelative(line.atZero, certified.intercept + 1, 1e-10);
  expectRelative(line.slope, certified.slope, 1e-12);
  expectRelative(
    Math.sqrt(line.residualSquares / DEGREES),
    certified.residualStandardDeviation,
    1e-10,
  );
});

test('one that would begin below zero goes through it, and what is left is at right angles to x', () => {
  const line = risingLine(x, y);
  expect(line.atZero).toBe(0);
  const along = x.reduce((sum, at, i) => sum + at * (y[i]! - line.slope * at), 0);
  expect(Math.abs(along)).toBeLessThan(1e-6);
  expect(line.residualSquares).toBeGreaterThan(DEGREES * certified.residualStandardDeviation ** 2);
});

test('one that would fall is level at the mean, and at zero where that is below', () => {
  // by hand: mean 2, residuals 1, 0, -1
  expect(risingLine([1, 2, 3], [3, 2, 1])).toEqual({ atZero: 2, slope: 0, residualSquares: 2 });
  expect(risingLine([1, 2, 3], [-1, -2, -3])).toEqual({
    atZero: 0,
    slope: 0,
    residualSquares: 14,
  });
  expect(risingLine([4, 4], [1, 3])).toEqual({ atZero: 2, slope: 0, residualSquares: 2 });
});

import { expect, test } from 'vitest';
import { meanInterval, nextValueInterval } from '../../../src/consistency/summary/mean-interval.ts';

// Student's t of 4 degrees of freedom at 0.975 is 2.776445105198 (tables of the NIST/SEMATECH e-Handbook: 2.776);
// the mean of 1 to 5 is 3 and its standard error the root of one half
test('of a mean', () => {
  const { low, high } = meanInterval([1, 2, 3, 4, 5])!;
  expect(low).toBeCloseTo(1.0367568385224428, 10);
  expect(high).toBeCloseTo(4.963243161477557, 10);
});

// with n = 3 the half width is 4.97 standard deviations
test('of the next value', () => {
  const { low, high } = nextValueInterval([-1, 0, 1])!;
  expect(high).toBeCloseTo(4.97, 2);
  expect(low).toBeCloseTo(-high, 12);
});

test('one value says nothing', () => {
  expect(meanInterval([1])).toBeNull();
  expect(nextValueInterval([])).toBeNull();
});

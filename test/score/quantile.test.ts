import { describe, expect, test } from 'vitest';
import { quantile } from '../../src/score/quantile.ts';

describe('the quantile', () => {
  // R 4, quantile(c(2, 4, 4, 5, 7, 9), type = 7)
  test.each([
    [0, 2],
    [0.25, 4],
    [0.5, 4.5],
    [0.75, 6.5],
    [0.9, 8],
    [1, 9],
  ])('%d of six values', (share, expected) =>
    expect(quantile([9, 2, 4, 7, 5, 4], share)).toBeCloseTo(expected, 12),
  );

  test('of nothing is null, of one value that value', () => {
    expect(quantile([], 0.5)).toBeNull();
    expect(quantile([3], 0.9)).toBe(3);
  });
});

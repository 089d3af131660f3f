import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nineDigits } from '../../../src/trace/log/nine-digits.ts';

describe('nine digits', () => {
  test.each([
    [20 / 7, 2.85714286],
    [-19 / 7, -2.71428571],
    [1 / 3, 0.333333333],
    [2e5 / 3, 66666.6667],
    [0, 0],
    [-7, -7],
    [1e-12 / 3, 3.33333333e-13],
    [1e12 / 3, 333333333000],
    [0.9999999999, 1],
    [9.9999999999, 10],
  ])('of %d are %d', (value, expected) => {
    expect(nineDigits(value)).toBe(expected);
  });

  test('leave what has no more as it is, to the bit', () => {
    const digits = fc.integer({ min: -999_999_999, max: 999_999_999 });
    fc.assert(
      fc.property(digits, fc.integer({ min: 0, max: 12 }), (whole, places) => {
        const value = Number(`${whole}e-${places}`);
        expect(Math.abs(nineDigits(value))).toBe(Math.abs(value));
      }),
    );
  });

  test('are those of the decimal notation, but for ties', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e15, max: 1e15, noNaN: true }), (value) => {
        const expected = Number(value.toPrecision(9));
        const last = Math.abs(value) * 1.0001e-8;
        const found = nineDigits(value);
        if (found === expected) return;
        expect(Math.abs(found - expected)).toBeLessThanOrEqual(last);
        expect(Math.abs(found - value)).toBeLessThanOrEqual(0.5001 * last);
      }),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { countText, fixed, percentText, signed, signedTenths, tenths } from '../src/number-text.ts';

describe('a number as text', () => {
  test.each([
    [-0.04, 1, '0.0'],
    [-0.06, 1, '-0.1'],
    [-0.4, 0, '0'],
    [-0, 2, '0.00'],
    [12.345, 1, '12.3'],
  ])('%d with %d decimals is %s, and nothing has no minus', (value, decimals, text) => {
    expect(fixed(value, decimals)).toBe(text);
  });

  test.each([
    [0.04, '0.0'],
    [-0.04, '0.0'],
    [0.06, '+0.1'],
    [-0.06, '-0.1'],
  ])('%d has a sign only where it shows more or less than nothing', (value, text) => {
    expect(signed(value, 1)).toBe(text);
  });

  test('a share is told per cent, with its unit or as tenths without', () => {
    expect(percentText(0.126)).toBe('13 %');
    expect(percentText(0.126, 1)).toBe('12.6 %');
    expect(tenths(-0.0004)).toBe('0.0');
    expect(signedTenths(0.0123)).toBe('+1.2');
  });

  test('one is singular, none and several are plural', () => {
    expect([0, 1, 2].map((count) => countText(count, 'rep'))).toEqual([
      '0 reps',
      '1 rep',
      '2 reps',
    ]);
  });
});

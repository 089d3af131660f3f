import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { medianShift } from '../../../src/consistency/summary/median-shift.ts';

// Hollander and Wolfe, Nonparametric Statistical Methods, table 4.1: permeability of chorioamnion at and before term
const AT_TERM = [0.8, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46];
const EARLY = [1.15, 0.88, 0.9, 0.74, 1.21];

describe('the published example', () => {
  test('has its estimate and its interval of level 96 %', () => {
    const { shift, interval } = medianShift(EARLY, AT_TERM)!;
    expect(shift).toBeCloseTo(0.305, 12);
    expect(interval.low).toBeCloseTo(-0.15, 12);
    expect(interval.high).toBeCloseTo(0.76, 12);
    // by listing all 3003 choices of 5 ranks out of 15
    expect(interval.level).toBeCloseTo(0.96003996003996, 12);
  });
});

test('two and two reach two thirds, the chance of neither extreme order of six', () => {
  expect(medianShift([1, 2], [3, 5])).toEqual({
    shift: 2.5,
    interval: { low: 1, high: 4, level: 1 - 2 / 6 },
  });
});

test('nothing on one side says nothing', () => {
  expect(medianShift([], [1])).toBeNull();
  expect(medianShift([1], [])).toBeNull();
});

test('sixty a side stay within rounding of the normal approximation', () => {
  const values = Array.from({ length: 60 }, (_, i) => i * i);
  const { interval } = medianShift(values, values)!;
  expect(interval.level).toBeGreaterThanOrEqual(0.95);
  expect(interval.level).toBeLessThan(0.951);
});

test('follows a shift, and turns its sign with the order of the groups', () => {
  const values = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(values, values, fc.double({ min: -5, max: 5, noNaN: true }), (a, b, by) => {
      const plain = medianShift(a, b)!;
      const shifted = medianShift(
        a,
        b.map((value) => value + by),
      )!;
      expect(shifted.shift).toBeCloseTo(plain.shift + by, 9);
      expect(shifted.interval.low).toBeCloseTo(plain.interval.low + by, 9);
      const turned = medianShift(b, a)!;
      expect(turned.shift).toBeCloseTo(-plain.shift, 9);
      expect(turned.interval.high).toBeCloseTo(-plain.interval.low, 9);
      expect(turned.interval.level).toBeCloseTo(plain.interval.level, 12);
    }),
  );
});

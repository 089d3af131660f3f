import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lagAutocorrelation } from '../../../src/consistency/summary/lag-autocorrelation.ts';
import { medianInterval } from '../../../src/consistency/summary/median-interval.ts';
import { spreadInterval } from '../../../src/consistency/summary/spread-interval.ts';
import { times } from '../rep-measures.ts';

describe('the interval of a median', () => {
  // places and levels of the sign test tables, for example Conover, Practical Nonparametric Statistics, table A3:
  // 1 - 2 P(X < place), X binomial of n and 1/2
  test.each([
    [5, 1, 1 - 2 / 32],
    [6, 1, 1 - 2 / 64],
    [8, 1, 1 - 2 / 256],
    [9, 2, 1 - 20 / 512],
    [10, 2, 1 - 22 / 1024],
    [20, 6, 0.9586105346679688],
    [25, 8, 0.9567147493362427],
  ])('of %d values stands on place %d and says its level', (n, place, level) => {
    const found = medianInterval(times(n, (i) => i + 1))!;
    expect([found.low, found.high]).toEqual([place, n + 1 - place]);
    expect(found.level).toBeCloseTo(level, 11);
  });

  test('at another level', () => {
    // n 10, places 3 and 8: 1 - 2 (1 + 10 + 45) / 1024
    const found = medianInterval([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.8)!;
    expect([found.low, found.high]).toEqual([3, 8]);
    expect(found.level).toBeCloseTo(1 - 112 / 1024, 12);
  });

  test('of fewer than two values is null', () => {
    expect(medianInterval([])).toBeNull();
    expect(medianInterval([1])).toBeNull();
  });

  test('of very many values is found at once', () => {
    const { low, high, level } = medianInterval(
      Float64Array.from({ length: 100_001 }, (_, i) => i),
    )!;
    expect(level).toBeGreaterThanOrEqual(0.95);
    expect(level).toBeLessThan(0.951);
    expect(high - low).toBeCloseTo(1.96 * Math.sqrt(100_001), -1);
  });
});

describe('the interval of a deviation', () => {
  // factors of the chi-square table (NIST/SEMATECH e-Handbook 7.2.3.1)
  test.each([
    [5, 0.6, 2.87],
    [8, 0.66, 2.04],
    [10, 0.69, 1.83],
    [20, 0.76, 1.46],
    [50, 0.84, 1.25],
    [100, 0.88, 1.16],
  ])('of %d values', (n, low, high) => {
    const found = spreadInterval(1, n - 1);
    expect(Math.abs(found.low - low)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(found.high - high)).toBeLessThanOrEqual(0.005);
  });
});

describe('the autocorrelation of neighbours', () => {
  test.each([[[]], [[1, 2]], [[3, 3, 3, 3]]])('of %j is null', (values) =>
    expect(lagAutocorrelation(values)).toBeNull(),
  );

  test('lies between -1 and 1 and ignores scale and place', () => {
    const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3 });
    fc.assert(
      fc.property(values, (all) => {
        const found = lagAutocorrelation(all);
        if (found === null) return;
        expect(Math.abs(found)).toBeLessThanOrEqual(1);
        expect(lagAutocorrelation(all.map((x) => 5 - 3 * x))).toBeCloseTo(found, 9);
      }),
    );
  });
});

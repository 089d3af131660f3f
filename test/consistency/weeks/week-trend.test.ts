import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/consistency/iso-week.ts';
import { weekTrend } from '../../../src/consistency/weeks/week-trend.ts';

/** A value a week from a Monday on; null for a week without one. */
const weeks = (values: readonly (number | null)[]): { monday: string; value: number }[] =>
  values.flatMap((value, i) =>
    value === null ? [] : [{ monday: addDays('2026-01-05', 7 * i), value }],
  );
const from = (count: number, of: (i: number) => number): number[] =>
  Array.from({ length: count }, (_, i) => of(i));

describe('a trend over weeks', () => {
  test('is per week of the calendar, a week without a value being a gap', () => {
    const { line, weeks: counted } = weekTrend(weeks([5, 4, null, null, 1, 0, -1]));
    expect(counted).toBe(5);
    expect(line!.slope).toBeCloseTo(-1, 12);
  });

  test('takes five weeks, and says how many are missing', () => {
    expect(weekTrend(weeks([4, 3, 2, 1]))).toMatchObject({ missing: 1, verdict: null });
    expect(weekTrend([])).toMatchObject({ missing: 5, line: null, verdict: null });
    expect(weekTrend(weeks([5, 4, 3, 2, 1]))).toMatchObject({ missing: 0, verdict: 'improving' });
  });

  test('is better the other way round of what is better the larger it is', () => {
    const rising = weeks([1, 2, 3, 4, 5, 6]);
    expect(weekTrend(rising).verdict).toBe('worsening');
    expect(weekTrend(rising, 'larger').verdict).toBe('improving');
  });

  test('is of the last 52 weeks', () => {
    const fell = from(30, (i) => 100 - i);
    const level = from(52, (i) => (i % 2 === 0 ? 3 : 3.1));
    expect(weekTrend(weeks([...fell, ...level]))).toMatchObject({
      weeks: 52,
      verdict: 'no clear change',
    });
  });
});

describe('neighbouring weeks', () => {
  // What is left of 10 - i when the line is taken off is 0.1 up and down: products -9, squares 10 of 0.01.
  test('that take turns about a line are not alike, however steep it is', () => {
    const found = weekTrend(weeks(from(10, (i) => 10 - i + (i % 2 === 0 ? 0.1 : -0.1))));
    expect(found.line!.slope).toBeCloseTo(-1, 12);
    expect(found.autocorrelation).toBeCloseTo(-0.9, 9);
    expect(found.isAutocorrelated).toBe(false);
  });

  test('that drift about a level are', () => {
    const found = weekTrend(weeks(from(12, (i) => 5 + Math.sin((2 * Math.PI * i) / 12))));
    expect(found.isAutocorrelated).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import { chartReading } from '../../../src/consistency/weeks/chart-reading.ts';
import { practiceChart } from '../../../src/consistency/weeks/practice-chart.ts';

/** Deviations from the centre in moving-range deviations: 0.2 between neighbours is 0.2 / 1.128 = 0.177 of a log unit. */
const STEP = 0.2;
const DEVIATION = STEP / (2 / Math.sqrt(Math.PI));
const baseline = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? STEP / 2 : -STEP / 2));

/** The reading after practices that lie so many deviations from the centre, from day 11 of the month on. */
function reading(...later: readonly number[]): string {
  const logs = [...baseline, ...later.map((deviations) => deviations * DEVIATION)];
  const medians = logs.map((log, i) => ({
    practiceId: i + 1,
    day: `2026-11-${String(i + 1).padStart(2, '0')}`,
    reps: 10,
    level: 0.03 * Math.exp(log),
  }));
  return chartReading(practiceChart(medians));
}

describe('the reading of the control chart', () => {
  test('says how many practices are missing before there are limits', () => {
    expect(chartReading(practiceChart([]))).toBe(
      'No limits yet: 10 more practices with eight hidden reps or more.',
    );
    expect(reading()).toMatch(
      /^The limits are set; the next practice is the first to be judged\.$/,
    );
  });

  test('says that there is no signal', () => {
    expect(reading(1, -1, 0.5)).toBe(
      'No signal: all 3 practices since the limits were set are ordinary scatter.',
    );
  });

  test('names the practice outside the limits, the last one or one before', () => {
    expect(reading(0, 3.1)).toMatch(
      /^Signal: the last practice, 2026-11-12, is above the limits, worse than scatter explains\.$/,
    );
    expect(reading(3.1, -1, 0)).toBe(
      'Signal: 2026-11-11 was above the limits, worse than scatter explains (1 of 3 practices so; the last is ordinary).',
    );
    expect(reading(2.9)).toMatch(/^No signal/);
  });

  // slack 0.5, limit 5 deviations: 1.6 adds 1.1 a practice, 4.4 after four and 5.5 after five
  test('names sums of small differences and the practice with which they passed their limit', () => {
    expect(reading(1.6, 1.6, 1.6, 1.6)).not.toContain('CUSUM');
    expect(reading(1.6, 1.6, 1.6, 1.6, 1.6, 1.6)).toContain(
      'small differences add up (CUSUM) since 2026-11-15: worse than the first ten practices',
    );
  });

  // weight 0.2, limits 3 sqrt(0.2 / 1.8 (1 - 0.8^2t)): 0.6 after one practice, 0.768 after two. Of -2.5 the mean is
  // -0.5 and then -0.9.
  test('names the weighted mean and the practice with which it left its limits', () => {
    expect(reading(-2.5)).not.toContain('EWMA');
    expect(reading(-2.5, -2.5, -2.5)).toContain(
      'the weighted mean is outside its limits (EWMA) since 2026-11-12: better than the first ten practices',
    );
  });

  test('puts several signals into one line', () => {
    const line = reading(...Array(8).fill(-1.6));
    expect(line).toMatch(
      /^Signals: the last practice, 2026-11-18, is the eighth or later in a row below/,
    );
    expect(line.match(/;/g)).toHaveLength(2);
    expect(line).not.toContain('\n');
  });
});

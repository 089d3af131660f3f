import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/consistency/iso-week.ts';
import type { RepMeasure } from '../../../src/consistency/rep-measure.ts';
import { feltSentences } from '../../../src/consistency/weeks/felt-sentences.ts';
import { type FeltTrend, feltTrend as trendOf } from '../../../src/consistency/weeks/felt-trend.ts';
import { aMeasure, repsOf, someNumbers, times } from '../rep-measures.ts';

const feltTrend = (reps: readonly RepMeasure[]): FeltTrend => trendOf(repsOf(reps));

/** Reps of a day that were early and late by turns, of which the first so many were felt the other way round. */
function reps(count: number, day: string, wrong: number): RepMeasure[] {
  return times(count, (i) => {
    const isLate = i % 2 === 0;
    return aMeasure({
      day,
      feedback: 'hidden',
      selfRating: isLate === i >= wrong ? 'late right' : 'early right',
      numbers: someNumbers({ startOfReleaseErrorS: isLate ? 0.1 : -0.1, peakError: 0 }),
    });
  });
}

test('one value per week where it was driven, oldest first; a week without ratings is a gap', () => {
  const unrated = reps(22, '2025-01-07', 0).map((rep) => ({ ...rep, selfRating: null }));
  const { weeks, all } = feltTrend([
    ...reps(20, '2024-12-29', 20), // Sunday of 2024-W52
    ...reps(20, '2024-12-30', 0), // Monday of 2025-W01
    ...unrated,
    ...reps(3, '2025-01-14', 0),
  ]);
  expect(weeks.map(({ monday, ratings }) => [monday, ratings])).toEqual([
    ['2024-12-23', 20],
    ['2024-12-30', 20],
    ['2025-01-13', 3],
  ]);
  expect(weeks[0]?.timing?.kappa).toBeCloseTo(-1, 12);
  expect(weeks[1]?.timing?.kappa).toBeCloseTo(1, 12);
  expect(weeks[2]).toMatchObject({ timing: null, needed: 20 });
  expect(all.ratings).toBe(43);
});

describe('over weeks', () => {
  const years = (wrong: (week: number) => number): RepMeasure[] =>
    times(6, (week) => reps(20, addDays('2026-10-05', 7 * week), wrong(week))).flat();

  test('a larger agreement is the better one', () => {
    // two of twenty more are felt right every week; one wrong early and one wrong late cost 0.2 of kappa
    const better = feltTrend(years((week) => 10 - 2 * week));
    expect(better.weeks.map(({ timing }) => timing?.kappa)).toEqual(
      [0, 0.2, 0.4, 0.6, 0.8, 1].map((kappa) => expect.closeTo(kappa, 12)),
    );
    expect(better.timing).toMatchObject({ weeks: 6, verdict: 'improving' });
    expect(better.timing.line?.slope).toBeCloseTo(0.2, 12);
    expect(feltTrend(years((week) => 2 * week)).timing.verdict).toBe('worsening');
    expect(feltTrend(years(() => 4)).timing.verdict).toBe('no clear change');
  });

  test('the words say so, and what is missing', () => {
    const [now, weeks] = feltSentences(feltTrend(years((week) => 10 - 2 * week)));
    expect(now).toMatch(/^Felt against measured timing: agreement 0\.50 \(1 always, 0 chance\)/);
    expect(weeks).toMatch(
      /^Felt timing over weeks: improving, agreement \+0\.20 a week \(\+0\.20 to \+0\.20, \d+ %\) over 6 weeks; 1\.00 in 2026-W46\.$/,
    );
    expect(feltSentences(feltTrend(reps(20, '2026-10-05', 2)))[1]).toBe(
      'Felt timing over weeks: no trend yet, 4 more weeks with 20 rated reps or more.',
    );
    expect(feltSentences(feltTrend([aMeasure()]))).toEqual([]);
  });
});

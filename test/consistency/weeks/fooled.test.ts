import { describe, expect, test } from 'vitest';
import type { Conditions, RepMeasure } from '../../../src/consistency/rep-measure.ts';
import {
  headline,
  hiddenTrendSentence,
  trendSentence,
} from '../../../src/consistency/weeks/headline.ts';
import {
  type WeeksProgress,
  weeksProgress,
} from '../../../src/consistency/weeks/weeks-progress.ts';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { inventedPractice, inventedWeeks } from '../invented-weeks.ts';
import { aMeasure, repsOf, someNumbers, times } from '../rep-measures.ts';

const TODAY = '2026-11-25';
const all = (reps: readonly RepMeasure[]): WeeksProgress[] =>
  weeksProgress(repsOf(reps), { today: TODAY, weeks: null });
/** A driver whose spread falls to a third in ten weeks, which is found where nothing is in the way. */
const better = (seed: number): RepMeasure[] =>
  inventedWeeks(10, seededRandom(seed), { factor: 0.3 });
/** A driver who stays the same. */
const same = (seed: number): RepMeasure[] => inventedWeeks(10, seededRandom(seed));
const changed = (rep: RepMeasure, changes: Partial<Conditions>): RepMeasure => ({
  ...rep,
  conditions: { ...rep.conditions, ...changes },
});
const claims = ({ spread }: WeeksProgress): boolean =>
  [spread.amount.verdict, spread.timing.verdict].some(
    (verdict) => verdict === 'improving' || verdict === 'worsening',
  );
const trends = ({ firstOfDayTrend, hiddenTrend }: WeeksProgress) => [
  firstOfDayTrend.verdict,
  hiddenTrend.verdict,
];

test('what is there is found: a spread that falls to a third', () => {
  for (const seed of [1, 2, 3, 4, 5]) {
    const [found] = all(better(seed));
    expect(found!.spread.amount.verdict).toBe('improving');
    expect(trends(found!)).toEqual(['improving', 'improving']);
  }
});

describe('no change is claimed', () => {
  test('of reps that are all tied, nor of a foot that stays the same on coarse steps', () => {
    const tied = inventedWeeks(10, seededRandom(1)).map((rep) => ({
      ...rep,
      numbers: someNumbers(),
    }));
    const [found] = all(tied);
    expect(headline(found!)).toMatch(/the reps of one side are all the same/);
    expect(claims(found!)).toBe(false);
    for (const verdict of trends(found!)) expect(verdict).toBe('no clear change');

    const coarse = (value: number | null): number => Math.round((value ?? 0) / 0.02) * 0.02;
    const wrong = times(
      40,
      (seed) =>
        all(
          same(seed).map((rep) => ({
            ...rep,
            numbers: someNumbers({
              averageErrorLevel: coarse(rep.numbers!.averageErrorLevel),
              releaseErrorLevel: coarse(rep.numbers!.releaseErrorLevel),
            }),
          })),
        )[0]!.spread.amount.verdict,
    ).filter((verdict) => verdict === 'improving' || verdict === 'worsening');
    // 5 % and what chance adds
    expect(wrong.length).toBeLessThanOrEqual(5);
  });

  test.each(['2026-11-24', '2026-10-20'])('because of one bad day (%s)', (badDay) => {
    const bad = times(30, (seed) => {
      const reps = same(seed).filter(({ day }) => day !== badDay);
      const day = inventedPractice({
        ...{ id: 99, day: badDay, random: seededRandom(seed, 9), errorLevel: 0.15 },
        spreadLevel: 0.16, // four times the usual
      });
      const at = reps.findIndex((rep) => rep.day > badDay);
      return all(at < 0 ? [...reps, ...day] : reps.toSpliced(at, 0, ...day))[0]!;
    });
    expect(bad.filter(({ spread }) => spread.amount.verdict === 'worsening').length).toBeLessThan(
      3,
    );
    expect(bad.filter(({ spread }) => spread.amount.verdict === 'improving').length).toBeLessThan(
      3,
    );
    // 2.5 % of either trend by chance, with a bad day or without
    expect(bad.filter((one) => trends(one).includes('worsening')).length).toBeLessThan(5);
  });

  test('because of a single day on either side, however many reps it had', () => {
    const day = (id: number, date: string, spreadLevel: number) =>
      inventedPractice({
        ...{ id, day: date, spreadLevel, random: seededRandom(id), errorLevel: 0.05, hidden: 40 },
      });
    const [found] = all([...day(1, '2026-10-20', 0.04), ...day(2, '2026-11-24', 0.01)]);
    expect(claims(found!)).toBe(false);
    expect(headline(found!)).toMatch(/hangs on one practice/);
  });

  test('from shown reps only, and all that is missing is said', () => {
    const [found] = all(better(1).map((rep) => ({ ...rep, feedback: 'shown' })));
    expect(claims(found!)).toBe(false);
    expect(trends(found!)).toEqual([null, null]);
    expect(headline(found!)).toBe(
      'Not known yet whether the spread changed in four weeks: missing are 35 hidden reps of the last two weeks and 35 hidden reps of four weeks before.',
    );
    expect(`${trendSentence(found!)} ${hiddenTrendSentence(found!)}`).toBe(
      'First-of-day reps: no trend yet, 5 more weeks with five such reps or more. Hidden reps: no trend yet, 5 more weeks with five such reps or more.',
    );
  });

  test('from two reps a week', () => {
    const weeks = times(10, (i) =>
      times(2, (rep) =>
        aMeasure({
          practiceId: i + 1,
          day: new Date(Date.UTC(2026, 8, 23) + 7 * i * 86_400_000).toISOString().slice(0, 10),
          feedback: 'hidden',
          numbers: someNumbers({ averageErrorLevel: 0.04 * 0.5 ** i * (rep === 0 ? 1 : -1) }),
        }),
      ),
    ).flat();
    const [found] = all(weeks);
    expect(claims(found!)).toBe(false);
    expect(trends(found!)).toEqual([null, null]);
    // two practices of two reps each on either side: two degrees of freedom of 34
    expect(headline(found!)).toMatch(
      /missing are 32 hidden reps of the last two weeks and 32 hidden/,
    );
  });

  test('across a change of pedals in the middle, and the day of it is said', () => {
    const cut = '2026-11-02';
    const [found] = all(
      better(1).map((rep) => (rep.day < cut ? changed(rep, { calibrationId: 'old' }) : rep)),
    );
    expect(claims(found!)).toBe(false);
    expect(headline(found!)).toMatch(
      /missing are 35 hidden reps of four weeks before \(reps before 2026-11-02 do not compare\)\.$/,
    );
    // four weeks on the new ones are no trend
    expect(trends(found!)).toEqual([null, null]);
    expect(found!.chart.limits === null || found!.chart.points[0]!.day >= cut).toBe(true);
  });

  test('to the right foot by a week with the left one, which is a series of its own', () => {
    const other = (day: string): boolean => day >= '2026-11-09' && day <= '2026-11-15';
    const reps = same(3).map((rep) =>
      other(rep.day)
        ? { ...changed(rep, { foot: 'right' }), numbers: someNumbers({ averageErrorLevel: 0.3 }) }
        : rep,
    );
    const [left, right] = all(reps);
    expect(left).toMatchObject({ foot: 'left' });
    expect(claims(left!)).toBe(false);
    expect(left!.weeks.find(({ week }) => week === '2026-W46')?.reps ?? 0).toBe(0);
    expect(right!.weeks.filter(({ reps: count }) => count > 0)).toHaveLength(1);
    expect(headline(right!)).toMatch(/^Not known yet .* missing are/);
  });

  test('across a mixture of score versions', () => {
    const mixed = better(1).map((rep, i) => changed(rep, { scoreVersion: i % 30 < 15 ? 1 : 2 }));
    const [found] = all(mixed);
    expect(claims(found!)).toBe(false);
    expect(trends(found!)).toEqual([null, null]);
    expect(headline(found!)).toMatch(/missing are \d+ hidden reps .*do not compare/);
  });
});

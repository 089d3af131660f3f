import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Verdict } from '../../../src/consistency/change/verdict.ts';
import type { Conditions, RepMeasure } from '../../../src/consistency/rep-measure.ts';
import { headline, trendSentence } from '../../../src/consistency/weeks/headline.ts';
import { periodChange } from '../../../src/consistency/weeks/period-change.ts';
import { practiceSentences } from '../../../src/consistency/weeks/practice-sentences.ts';
import { segmentsOf } from '../../../src/consistency/weeks/segments.ts';
import { weekRows } from '../../../src/consistency/weeks/week-rows.ts';
import { weekTrend } from '../../../src/consistency/weeks/week-trend.ts';
import { weeksJson } from '../../../src/consistency/weeks/weeks-json.ts';
import {
  type WeeksProgress,
  weeksProgress,
} from '../../../src/consistency/weeks/weeks-progress.ts';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { inventedPractice, inventedWeeks } from '../invented-weeks.ts';
import { aMeasure, aVoid, CONDITIONS, repsOf, someNumbers, times } from '../rep-measures.ts';

const TODAY = '2026-11-25';
const all = (reps: readonly RepMeasure[], weeks: number | null = null): WeeksProgress[] =>
  weeksProgress(repsOf(reps), { today: TODAY, weeks });
const one = (reps: readonly RepMeasure[]): WeeksProgress => {
  const found = all(reps);
  expect(found).toHaveLength(1);
  return found[0]!;
};
const withConditions = (rep: RepMeasure, changes: Partial<Conditions>): RepMeasure => ({
  ...rep,
  conditions: { ...rep.conditions, ...changes },
});

test('no reps, no progress', () => expect(all([])).toEqual([]));

describe('series', () => {
  test.each<[keyof Conditions, string]>([
    ['foot', 'right'],
    ['condition', 'wet'],
    ['source', 'virtual'],
  ])(
    '%s is never taken together with another one, and taking turns breaks nothing',
    (name, value) => {
      const reps = times(40, (i) =>
        i % 2 === 0 ? aMeasure() : withConditions(aMeasure(), { [name]: value }),
      );
      const found = all(reps);
      expect(found.map(({ weeks }) => weeks[0]?.reps)).toEqual([20, 20]);
      expect(found.every(({ days }) => days.length === 1)).toBe(true);
    },
  );

  test('those without a rep in the weeks that are shown are left out', () => {
    const old = aMeasure({ day: '2026-11-16', targetId: 'old' }); // Monday of the week before
    expect(all([old, aMeasure()], 1).map(({ targetId }) => targetId)).toEqual(['hairpin']);
    expect(all([old, aMeasure()], 2)).toHaveLength(2);
  });
});

describe('weeks', () => {
  const weeksOf = (reps: readonly RepMeasure[]): [string, number][] =>
    one(reps).weeks.map(({ week, reps: count }) => [week, count]);

  test('without practice stay gaps, up to today and across a change of the clocks', () => {
    // Berlin goes back to winter time on Sunday, 2026-10-25
    const days = ['2026-10-19', '2026-10-25', '2026-10-26', '2026-11-15'];
    expect(weeksOf(days.map((day) => aMeasure({ day })))).toEqual([
      ['2026-W43', 2],
      ['2026-W44', 1],
      ['2026-W45', 0],
      ['2026-W46', 1],
      ['2026-W47', 0],
      ['2026-W48', 0],
    ]);
    const gap = one([aMeasure({ day: '2026-11-09' })]).weeks[1];
    expect(gap?.hidden.medianReleaseErrorLevel).toEqual({ value: null, reps: 0, needed: 5 });
    expect(gap?.spreadLevel.value).toBeNull();
  });

  test('of the turn of the year have the year of their Thursday', () => {
    const found = weeksProgress(
      repsOf([aMeasure({ day: '2026-12-31' }), aMeasure({ day: '2027-01-03' })]),
      {
        today: '2027-01-04',
        weeks: null,
      },
    );
    expect(found[0]?.weeks.map(({ week, reps }) => [week, reps])).toEqual([
      ['2026-W53', 2],
      ['2027-W01', 0],
    ]);
  });

  test('hold medians from five reps on, of each kind of feedback by itself', () => {
    const rep = (feedback: RepMeasure['feedback'], level: number): RepMeasure =>
      aMeasure({ feedback, numbers: someNumbers({ releaseErrorLevel: level }) });
    const [week] = one([
      ...[5, 1, 4, 2, 3].map((value) => rep('hidden', value)),
      ...[9, 9, 9, 9].map((value) => rep('first-of-day', value)),
      ...times(9, () => rep('shown', 7)),
      { ...rep('hidden', 99), warmUp: true },
      aVoid('aborted'),
    ]).weeks;
    expect(week?.hidden.medianReleaseErrorLevel).toEqual({ value: 3, reps: 5, needed: 5 });
    expect(week?.hidden.interval).toEqual({ low: 1, high: 5, level: expect.closeTo(0.9375, 12) });
    expect(week?.firstOfDay.medianReleaseErrorLevel).toEqual({ value: null, reps: 4, needed: 5 });
    expect(week?.firstOfDay.interval).toBeNull();
    expect(week?.reps).toBe(19);
  });

  test('are cut where conditions change, and say what changed', () => {
    const cut = one([
      aMeasure({ day: '2026-11-23' }),
      withConditions(aMeasure({ day: '2026-11-24' }), { footwear: 'socks' }),
      withConditions(aMeasure({ day: TODAY }), { footwear: 'socks', calibrationId: 'bead' }),
    ]);
    expect(cut.weeks.map(({ week, reps, changed }) => [week, reps, changed])).toEqual([
      ['2026-W48', 1, []],
      ['2026-W48', 1, ['footwear']],
      ['2026-W48', 1, ['calibrationId']],
    ]);
    expect(cut.since).toBe(TODAY);
  });
});

describe('a break in comparability', () => {
  const broken = (from: string, changes: Partial<Conditions>): RepMeasure[] =>
    inventedWeeks(12, seededRandom(4), { factor: 0.1 }).map((rep) =>
      rep.day >= from ? withConditions(rep, changes) : rep,
    );

  test.each<Partial<Conditions>>([
    { footwear: 'socks' },
    { calibrationId: 'bead' },
    { sensor: 'travel' },
    { targetVersion: 'v-two' },
    { scoreVersion: 2 },
  ])('%j ends all that was known, and the sentence says since when', (changes) => {
    const found = one(broken('2026-11-16', changes));
    expect(found.spread.amount.verdict).toBeNull();
    expect(found.spread.amount.before.reps).toBe(0);
    expect(headline(found)).toMatch(/35 hidden reps of four weeks before \(reps before 2026-11-16/);
    expect(found.hiddenTrend).toMatchObject({ weeks: 2, missing: 3, verdict: null });
    expect(found.chart.points).toHaveLength(6);
    expect(found.chart.limits).toBeNull();
    expect(found.repeatability?.groups).toBe(6);
    expect(found.weeks).toHaveLength(12);
  });

  test('does not heal when the old conditions return', () => {
    const reps = inventedWeeks(12, seededRandom(4)).map((rep) =>
      rep.day >= '2026-11-09' && rep.day < '2026-11-16'
        ? withConditions(rep, { footwear: 'socks' })
        : rep,
    );
    expect(one(reps).chart.points).toHaveLength(6);
  });

  test('long ago no longer matters to the two periods', () => {
    const found = one(broken('2026-10-01', { footwear: 'socks' }));
    expect(found.spread.brokenOn).toBeNull();
    expect(found.spread.amount.verdict).toBe('improving');
  });
});

describe('the words', () => {
  test('a foot that gets better', () => {
    const found = one(inventedWeeks(11, seededRandom(1), { factor: 0.25, missed: [3] }));
    expect(headline(found)).toMatch(
      /^Improving: spread is down from \d\.\d to \d\.\d % of full scale in four weeks \(\d+ % less to \d+ % less with 95 % confidence\); 72 and 72 hidden reps\.$/,
    );
    expect(trendSentence(found)).toMatch(/^First-of-day reps: improving, release error -0/);
    expect(found.chart.points.at(-1)?.signal).toBe('below limits');
    expect(found.chart.points.at(-1)?.sums?.signal).toBe('low');
    expect(found.curve?.plateau).not.toBeNull();
    expect(found.firstOfDayTrend.weeks).toBe(10);
  });

  test('a foot that gets worse', () => {
    const found = one(inventedWeeks(11, seededRandom(1), { factor: 4 }));
    expect(headline(found)).toMatch(/^Worsening: spread is up from .* % more to \d+ % more/);
    expect(trendSentence(found)).toMatch(/worsening, release error \+/);
    expect(found.curve?.chosen?.family).toBe('constant');
    expect(found.chart.points.at(-1)?.signal).toBe('above limits');
  });

  test('a foot that stays as it is: false claims of either kind are as rare as said', () => {
    const random = seededRandom(20261125);
    const drivers = times(300, () => {
      const segments = segmentsOf(repsOf(inventedWeeks(8, random)));
      const points = weekRows(segments, TODAY).flatMap(({ monday, hidden }) => {
        const { value } = hidden.medianReleaseErrorLevel;
        return value === null ? [] : [{ monday, value }];
      });
      return { spread: periodChange(segments, TODAY).amount, trend: weekTrend(points) };
    });
    const claims = (is: (driver: (typeof drivers)[number]) => Verdict | null): number =>
      drivers.filter((driver) => is(driver) !== 'no clear change').length / drivers.length;
    // 5 %; three standard errors of 300 drivers are 3.8 points
    expect(claims(({ spread }) => spread.verdict)).toBeLessThan(0.088);
    expect(claims(({ trend }) => trend.verdict)).toBeLessThan(0.088);
  });

  test('a foot that is about the same', () => {
    expect(headline(one(inventedWeeks(8, seededRandom(2))))).toMatch(
      /^No clear change: spread \d\.\d % of full scale four weeks ago, \d\.\d % now \(/,
    );
  });

  test('too few reps claim nothing, and say what is missing', () => {
    const random = seededRandom(5);
    const practice = (id: number, day: string, hidden: number, spreadLevel: number): RepMeasure[] =>
      inventedPractice({ id, day, random, spreadLevel, errorLevel: 0.04, hidden });
    const found = one([
      ...practice(1, '2026-10-20', 40, 0.2),
      ...practice(2, '2026-11-20', 34, 0.01),
    ]);
    expect(headline(found)).toBe(
      'Not known yet whether the spread changed in four weeks: missing are 1 hidden rep of the last two weeks.',
    );
    expect(trendSentence(found)).toMatch(/no trend yet, 3 more weeks/);
  });

  test('shown and first-of-day reps never stand in for hidden ones', () => {
    const reps = inventedWeeks(8, seededRandom(1), { factor: 0.2 }).filter(
      ({ feedback }) => feedback !== 'hidden',
    );
    const found = one(reps);
    expect(found.spread.amount.verdict).toBeNull();
    expect(found.chart.points).toEqual([]);
    expect(found.repeatability).toBeNull();
    expect(found.curve).toBeNull();
  });
});

describe('the periods', () => {
  test('are two weeks each, four weeks apart, with both ends in', () => {
    const days = [
      '2026-10-14',
      '2026-10-15',
      '2026-10-28',
      '2026-10-29',
      '2026-11-11',
      '2026-11-12',
      TODAY,
    ];
    const reps = days.flatMap((day, id) =>
      times(3, (i) =>
        aMeasure({
          day,
          practiceId: id,
          feedback: 'hidden',
          numbers: someNumbers({ averageErrorLevel: 0.01 * i }),
        }),
      ),
    );
    const { spread } = one(reps);
    expect(spread).toMatchObject({
      beforeFrom: '2026-10-15',
      beforeTo: '2026-10-28',
      nowFrom: '2026-11-12',
      nowTo: TODAY,
    });
    expect([spread.amount.before.reps, spread.amount.now.reps]).toEqual([6, 6]);
    expect(spread.amount.now.deviation).toBeCloseTo(0.01, 12);
  });
});

test('the control chart keeps the limits of its first ten practices', () => {
  const reps = inventedWeeks(8, seededRandom(6), { factor: 0.3 });
  const early = one(reps.filter(({ practiceId }) => practiceId <= 10)).chart;
  const late = one(reps).chart;
  expect(early.limits).not.toBeNull();
  expect(late.limits).toEqual(early.limits);
  expect(late.points.filter(({ isBaseline }) => isBaseline)).toHaveLength(10);
  expect(one(reps.filter(({ practiceId }) => practiceId <= 9)).chart).toMatchObject({
    limits: null,
    missingPractices: 1,
  });
});

test('what was felt is set against what was measured', () => {
  const rated = times(30, (i) => {
    const side = (i % 3) - 1;
    return aMeasure({
      feedback: 'hidden',
      selfRating: ['early light', 'right right', 'late heavy'][i % 3]!,
      numbers: someNumbers({
        startOfReleaseErrorS: 0.06 * side,
        peakError: i % 2 === 0 ? 0.15 * side : -0.15 * side,
      }),
    });
  });
  const found = one(rated);
  expect(found.felt.all).toMatchObject({ timing: { kappa: 1 }, ratings: 30, needed: 20 });
  expect(Math.abs(found.felt.all.amount!.kappa)).toBeLessThan(0.5);
  expect(practiceSentences(found)).toContain(
    'Felt against measured timing: agreement 1.00 (1 always, 0 chance) in 30 rated reps.',
  );
  const few = one(rated.slice(0, 19));
  expect(few.felt.all.timing).toBeNull();
  expect(practiceSentences(few)).toContain(
    'Felt against measured amount: 19 rated reps, missing 1 more before it can be said.',
  );
  expect(weeksJson([few]).targets).toMatchObject([{ felt_missing_reps: 1 }]);
  const shown = rated.map((rep) => ({ ...rep, feedback: 'shown' as const }));
  expect(one([...rated, ...shown]).felt.all.ratings).toBe(30);
  const odd = one([aMeasure({ feedback: 'hidden', selfRating: 'toString' })]);
  expect(odd.felt.all.ratings).toBe(0);
});

test('every rep that ran to its end is in exactly one week, and no number is NaN', () => {
  const rep = fc
    .record({
      day: fc.constantFrom('2026-10-05', '2026-10-25', '2026-11-02', '2026-11-24'),
      footwear: fc.constantFrom('boots', 'socks'),
      feedback: fc.constantFrom('shown' as const, 'hidden' as const, 'first-of-day' as const),
      level: fc.oneof(
        fc.constant(null),
        fc.constant(0),
        fc.double({ min: 0, max: 1, noNaN: true }),
      ),
      practiceId: fc.integer({ min: 1, max: 4 }),
    })
    .map(({ footwear, level, ...more }) =>
      aMeasure({
        ...more,
        conditions: { ...CONDITIONS, footwear },
        numbers: someNumbers({
          releaseErrorLevel: level,
          averageErrorLevel: level,
          startOfReleaseErrorS: level,
        }),
      }),
    );
  fc.assert(
    fc.property(fc.array(rep, { minLength: 1, maxLength: 120 }), (unsorted) => {
      const reps = [...unsorted].sort((a, b) => a.day.localeCompare(b.day));
      const found = one(reps);
      expect(found.weeks.reduce((sum, week) => sum + week.reps, 0)).toBe(reps.length);
      expect(numbersIn(found).filter((value) => Number.isNaN(value))).toEqual([]);
      expect(headline(found) + trendSentence(found)).not.toMatch(/NaN|Infinity|undefined|null/);
    }),
  );
});

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersIn);
}

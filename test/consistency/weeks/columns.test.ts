import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measureColumns, measuresOf } from '../../../src/consistency/measure-columns.ts';
import { median } from '../../../src/consistency/median.ts';
import type { PracticeDay } from '../../../src/consistency/practice-day.ts';
import { allReps } from '../../../src/consistency/rep-columns.ts';
import type { RepMeasure } from '../../../src/consistency/rep-measure.ts';
import type { WeekRow } from '../../../src/consistency/weeks/week-rows.ts';
import {
  type WeeksProgress,
  weeksProgress,
} from '../../../src/consistency/weeks/weeks-progress.ts';
import { type PlainDay, type PlainWeek, plainProgress } from '../plain-progress.ts';
import { aMeasure, CONDITIONS, NOTHING } from '../rep-measures.ts';

const TODAY = '2026-11-25';
const maybe = (max: number): fc.Arbitrary<number | null> =>
  fc.option(fc.double({ min: -max, max, noNaN: true }), { freq: 8 });

/** A practice: some reps of one day in a row, which share nearly everything. */
const practice = fc.record({
  daysAgo: fc.nat({ max: 45 }),
  driver: fc.constantFrom('Kim', 'Lou'),
  foot: fc.constantFrom('left', 'left', 'right'),
  footwear: fc.constantFrom('boots', 'boots', 'socks'),
  reps: fc.array(
    fc.record({
      targetId: fc.constantFrom('hairpin', 'hairpin', 'hairpin', 'sweeper'),
      feedback: fc.constantFrom(
        'hidden' as const,
        'hidden' as const,
        'shown' as const,
        'first-of-day' as const,
      ),
      warmUp: fc.constantFrom(false, false, false, true),
      kind: fc.constantFrom(
        'scored',
        'scored',
        'scored',
        'scored',
        'no rep',
        'aborted',
        'device lost',
      ),
      condition: fc.constantFrom('dry', 'dry', 'dry', null),
      scoreVersion: fc.constantFrom(1, 1, 1, 1, 1, 1, 2),
      selfRating: fc.constantFrom(null, 'late heavy', 'early right'),
      score: fc.double({ min: 0, max: 100, noNaN: true }),
      error: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { freq: 8 }),
      average: maybe(1),
      start: maybe(0.2),
      peak: maybe(0.3),
    }),
    { minLength: 1, maxLength: 40 },
  ),
});
type Practice = typeof practice extends fc.Arbitrary<infer T> ? T : never;

function measuresOfPractices(practices: readonly Practice[]): RepMeasure[] {
  const inOrder = [...practices].sort((a, b) => b.daysAgo - a.daysAgo);
  return inOrder.flatMap(({ daysAgo, driver, foot, footwear, reps }, i) =>
    reps.map((rep, j) => {
      const isVoid = rep.kind === 'aborted' || rep.kind === 'device lost';
      const scoreVersion = isVoid ? null : rep.scoreVersion;
      const measured = {
        score: rep.score,
        releaseErrorLevel: rep.error,
        averageErrorLevel: rep.average,
        startOfReleaseErrorS: rep.start,
        peakError: rep.peak,
        reapplications: Math.round(rep.score / 20),
      };
      return aMeasure({
        repId: 100 * i + j + 1,
        practiceId: i + 1,
        driver,
        targetId: rep.targetId,
        day: new Date(Date.parse(TODAY) - daysAgo * 86_400_000).toISOString().slice(0, 10),
        feedback: rep.feedback,
        warmUp: rep.warmUp,
        selfRating: rep.selfRating,
        conditions: { ...CONDITIONS, foot, footwear, condition: rep.condition, scoreVersion },
        voided: isVoid ? (rep.kind as 'aborted' | 'device lost') : null,
        numbers: isVoid ? null : rep.kind === 'no rep' ? NOTHING : measured,
      });
    }),
  );
}

test('columns say what plain reps say', () => {
  fc.assert(
    fc.property(fc.array(practice, { maxLength: 12 }), (practices) => {
      const measures = measuresOfPractices(practices);
      const found = weeksProgress(allReps(measureColumns(measures)), { today: TODAY, weeks: null });
      const plain = plainProgress(measures, TODAY);
      expect(found.map(nameOf)).toEqual(plain.map(({ name }) => name));
      for (const [i, series] of found.entries()) {
        const expected = plain[i]!;
        expect(series.since).toBe(expected.since);
        expectWeeks(
          series.weeks.filter(({ conditions }) => conditions !== null),
          expected.weeks,
        );
        expect(series.days.map(plainly)).toEqual(expected.days.map(nearly));
        expect(series.chart.points.map((one) => [one.practiceId, one.reps, one.level])).toEqual(
          expected.chart,
        );
        const { before, now } = series.spread.amount;
        expect([before.reps, now.reps]).toEqual(expected.compared);
        expect(series.latest?.hidden.repIds ?? null).toEqual(expected.latestReps);
        expect(series.felt.all.ratings).toBe(expected.rated);
      }
    }),
  );
});

test('measures come back from their columns', () => {
  fc.assert(
    fc.property(fc.array(practice, { maxLength: 5 }), (practices) => {
      const measures = measuresOfPractices(practices);
      expect(measuresOf(measureColumns(measures))).toEqual(measures);
    }),
  );
});

function nameOf({ driver, targetId, source, foot, condition }: WeeksProgress): string {
  return JSON.stringify([driver, targetId, source, foot, condition]);
}

function expectWeeks(found: readonly WeekRow[], expected: readonly PlainWeek[]): void {
  expect(
    found.map(({ monday, changed, reps, practices }) => ({ monday, changed, reps, practices })),
  ).toEqual(
    expected.map(({ monday, changed, reps, practices }) => ({ monday, changed, reps, practices })),
  );
  for (const [i, { hidden, firstOfDay, spreadLevel }] of found.entries()) {
    const { hiddenErrors, firstErrors, spread } = expected[i]!;
    for (const [errors, values] of [
      [hidden, hiddenErrors],
      [firstOfDay, firstErrors],
    ] as const)
      expect(errors.medianReleaseErrorLevel).toEqual({
        value: values.length < 5 ? null : median(values),
        reps: values.length,
        needed: 5,
      });
    expect(spreadLevel.value).toEqual(spread === null ? null : expect.closeTo(spread, 12));
  }
}

function plainly(day: PracticeDay): PlainDay {
  return {
    day: day.day,
    week: day.week,
    changed: day.changed,
    counts: [
      ...[day.reps, day.shown, day.hidden, day.firstOfDay],
      ...[day.warmUp, day.aborted, day.deviceLost, day.measured],
    ],
    medianScore: day.medianScore.value,
    medianError: day.medianReleaseErrorLevel.value,
    averageError: day.averageErrorLevel.value,
    spread: day.amountSpreadLevel.value,
    timingSpreadS: day.timingSpreadS.value,
    reapplications: day.reapplicationsPerRep,
  };
}

/** Sums in another order differ in the last digits. */
function nearly(day: PlainDay): object {
  const near = (value: number | null): unknown =>
    value === null ? null : expect.closeTo(value, 10);
  return {
    ...day,
    averageError: near(day.averageError),
    spread: near(day.spread),
    timingSpreadS: near(day.timingSpreadS),
    reapplications: near(day.reapplications),
  };
}

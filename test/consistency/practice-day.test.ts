import { expect, test } from 'vitest';
import { practiceDay as dayOf, type PracticeDay } from '../../src/consistency/practice-day.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { aMeasure, aVoid, NOTHING, repsOf, someNumbers, times } from './rep-measures.ts';

const practiceDay = (reps: readonly RepMeasure[], changed: PracticeDay['changed']): PracticeDay =>
  dayOf(repsOf(reps), changed);

test('reps are counted by what the driver saw; void reps are counted apart', () => {
  const day = practiceDay(
    [
      aMeasure({ feedback: 'first-of-day' }),
      aMeasure({ feedback: 'hidden', warmUp: true }),
      aMeasure(),
      aMeasure({ numbers: NOTHING }),
      aVoid('aborted'),
      aVoid('device lost'),
    ],
    [],
  );
  expect(day).toMatchObject({
    reps: 4,
    shown: 2,
    hidden: 1,
    firstOfDay: 1,
    warmUp: 1,
    aborted: 1,
    deviceLost: 1,
    measured: 2,
    week: '2026-W48',
  });
});

test('a rep without a release counts 0 points and has no errors', () => {
  const reps = [
    ...times(4, () => aMeasure({ numbers: NOTHING })),
    ...times(5, () => aMeasure({ numbers: someNumbers({ score: 80, reapplications: 2 }) })),
  ];
  const day = practiceDay(reps, []);
  expect(day.medianScore).toEqual({ value: 80, reps: 9, needed: 8 });
  expect(day.medianReleaseErrorLevel).toEqual({ value: null, reps: 5, needed: 8 });
  expect(day.reapplicationsPerRep).toBe(2);
  const worse = practiceDay([...reps, aMeasure({ numbers: NOTHING })], []);
  expect(worse.medianScore.value).toBe(40); // five of 0, five of 80
});

test('medians come with the eighth rep, the spread with the tenth', () => {
  const known = (count: number): boolean[] => {
    const day = practiceDay(
      times(count, () => aMeasure()),
      [],
    );
    return [day.medianScore, day.medianReleaseErrorLevel, day.averageErrorLevel]
      .concat(day.amountSpreadLevel, day.timingSpreadS)
      .map(({ value }) => value !== null);
  };
  expect(known(7)).toEqual([false, false, false, false, false]);
  expect(known(8)).toEqual([true, true, true, false, false]);
  expect(known(9)).toEqual([true, true, true, false, false]);
  expect(known(10)).toEqual([true, true, true, true, true]);
});

test('numbers by hand', () => {
  const reps = times(10, (i) =>
    aMeasure({
      numbers: someNumbers({
        score: 10 * i,
        releaseErrorLevel: 0.01 * (i + 1),
        averageErrorLevel: i % 2 === 0 ? 0.03 : -0.01,
        startOfReleaseErrorS: 0.01 * i,
        reapplications: i === 0 ? 5 : 0,
      }),
    }),
  );
  const day = practiceDay(reps, []);
  expect(day.medianScore.value).toBe(45);
  expect(day.medianReleaseErrorLevel.value).toBeCloseTo(0.055, 12);
  expect(day.averageErrorLevel.value).toBeCloseTo(0.01, 12);
  // five values 0.02 above and five 0.02 below the mean: sqrt(10 * 0.02^2 / 9)
  expect(day.amountSpreadLevel.value).toBeCloseTo(0.0210818510677892, 12);
  // 0..9 has the sample variance 55 / 6
  expect(day.timingSpreadS.value).toBeCloseTo(0.01 * Math.sqrt(55 / 6), 12);
  expect(day.reapplicationsPerRep).toBe(0.5);
});

test('warm-up reps are in no statistic', () => {
  const reps = times(8, () => aMeasure());
  const cold = aMeasure({ warmUp: true, numbers: someNumbers({ score: 1, reapplications: 99 }) });
  const day = practiceDay([cold, cold, cold, ...reps], []);
  expect(day.reps).toBe(11);
  expect(day.medianScore).toEqual({ value: 70, reps: 8, needed: 8 });
  expect(day.reapplicationsPerRep).toBe(1);
});

test('a day of void reps has no numbers', () => {
  const day = practiceDay([aVoid('aborted'), aMeasure({ ...aVoid('aborted') })], []);
  expect(day.medianScore).toEqual({ value: null, reps: 0, needed: 8 });
  expect(day.reapplicationsPerRep).toBeNull();
});

import { expect, test } from 'vitest';
import { practiceDays } from '../../src/consistency/practice-days.ts';
import { progressSentence } from '../../src/consistency/progress-sentence.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { aMeasure, aVoid, NOTHING, repsOf, someNumbers, times } from './rep-measures.ts';

const sentence = (reps: readonly RepMeasure[]): string =>
  progressSentence(practiceDays(repsOf(reps)));

test.each([
  [1, /^Nothing can be said yet: 7 more reps on 2026-11-25 would give a median\.$/],
  [7, /1 more rep on/],
  [8, /the spread is not: 2 more reps would give it/],
  [9, /1 more rep would/],
  [10, /^2026-11-25: \d\.\d % of full scale /],
])('after %d reps', (count, expected) => {
  expect(sentence(times(count, () => aMeasure()))).toMatch(expected);
});

test.each([
  // alternating by 2 % to both sides of the average: sqrt(10 * 0.02^2 / 9) = 2.1 %
  [-0.05, '2026-11-25: 5.0 % of full scale light, more than reps differ (2.1 %).'],
  [0.03, '2026-11-25: 3.0 % of full scale heavy, more than reps differ (2.1 %).'],
  [-0.01, '2026-11-25: 1.0 % of full scale light, within what reps differ (2.1 %).'],
])('a foot that is off by %d on average: %s', (average, expected) => {
  const reps = times(10, (i) =>
    aMeasure({
      numbers: someNumbers({ averageErrorLevel: average + (i % 2 === 0 ? 0.02 : -0.02) }),
    }),
  );
  expect(sentence(reps)).toBe(expected);
});

test('many reps long ago do not help the last day', () => {
  const old = times(30, () => aMeasure({ day: '2026-10-01' }));
  expect(sentence([...old, aMeasure()])).toMatch(/7 more reps on 2026-11-25/);
});

test('reps without a release give a score and no errors', () => {
  const reps = [...times(6, () => aMeasure({ numbers: NOTHING })), ...times(5, () => aMeasure())];
  expect(sentence(reps)).toMatch(/errors not: 3 more reps with a release/);
});

test('no sentence is wider than the screen, and none speaks of better or worse', () => {
  for (const count of times(12, (i) => i)) {
    const text = sentence([aVoid('aborted'), ...times(count, () => aMeasure())]);
    expect(text.length).toBeLessThanOrEqual(80);
    expect(text).not.toMatch(/better|worse|improv|trend/i);
  }
});

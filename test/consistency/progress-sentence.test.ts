import { expect, test } from 'vitest';
import { practiceDays } from '../../src/consistency/practice-days.ts';
import { progressSentence } from '../../src/consistency/progress-sentence.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { aMeasure, aVoid, NOTHING, repsOf, someNumbers, times } from './rep-measures.ts';

const sentence = (reps: readonly RepMeasure[]): string =>
  progressSentence(practiceDays(repsOf(reps)));

test.each([
  [1, /^Nothing can be said of 2026-11-25: a day's median takes 8 reps, not 1\.$/],
  [7, /8 reps, not 7\.$/],
  [8, /the spread is not: a day's takes 10 reps, not 8\.$/],
  [9, /10 reps, not 9\.$/],
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
  expect(sentence([...old, aMeasure()])).toMatch(/of 2026-11-25: .* 8 reps, not 1\.$/);
});

test('reps without a release give a score and no errors', () => {
  const reps = [...times(6, () => aMeasure({ numbers: NOTHING })), ...times(5, () => aMeasure())];
  expect(sentence(reps)).toMatch(/errors not: with a release they take 8 reps, not 5\.$/);
});

test('no sentence is wider than the screen, and none speaks of better or worse', () => {
  for (const count of times(12, (i) => i)) {
    const text = sentence([aVoid('aborted'), ...times(count, () => aMeasure())]);
    expect(text.length).toBeLessThanOrEqual(80);
    expect(text).not.toMatch(/better|worse|improv|trend/i);
  }
});

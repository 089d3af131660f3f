import { expect, test } from 'vitest';
import { progressSentence } from '../../src/consistency/progress-sentence.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { targetProgress } from '../../src/consistency/target-progress.ts';
import { aMeasure, aVoid, NOTHING, repsOf, times } from './rep-measures.ts';

const sentence = (reps: readonly RepMeasure[]): string =>
  progressSentence(targetProgress(repsOf(reps))[0]!);

test.each([
  [1, /^Nothing can be said yet: 7 more reps on 2026-11-25 would give a median\.$/],
  [7, /1 more rep on/],
  [8, /the spread is not: 2 more reps would give it/],
  [9, /1 more rep would/],
  [10, /^Level and spread of the last day are known\./],
])('after %d reps', (count, expected) => {
  expect(sentence(times(count, () => aMeasure()))).toMatch(expected);
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

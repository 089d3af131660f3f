import { expect, test } from 'vitest';
import type { RepMeasure } from '../../../src/consistency/rep-measure.ts';
import { bestReps } from '../../../src/target/learn/best-reps.ts';

const CONDITIONS: RepMeasure['conditions'] = {
  targetVersion: 'one',
  scoreVersion: 1,
  source: 'hid',
  sensor: 'force',
  calibrationId: 'a',
  foot: 'left',
  footwear: 'shoe',
  condition: null,
};

function rep(repId: number, score: number | null, other: Partial<RepMeasure> = {}): RepMeasure {
  return {
    repId,
    driver: 'D',
    targetId: 'hairpin',
    practiceId: 1,
    day: '2026-11-25',
    zone: 'UTC',
    conditions: CONDITIONS,
    feedback: 'shown',
    warmUp: false,
    selfRating: null,
    voided: null,
    numbers:
      score === null
        ? null
        : {
            score,
            releaseErrorLevel: 0.02,
            averageErrorLevel: 0,
            startOfReleaseErrorS: 0,
            peakError: 0,
            reapplications: 0,
          },
    ...other,
  };
}

test('the best of what compares with the newest rep, the newer first of equals', () => {
  const reps = [
    rep(1, 99, { conditions: { ...CONDITIONS, calibrationId: 'before' } }),
    rep(2, 70),
    rep(3, 95, { warmUp: true }),
    rep(4, 98, { driver: 'E' }),
    rep(5, 80),
    rep(6, null, { voided: 'aborted' }),
    rep(7, 90),
    rep(8, 80),
  ];
  const { reps: best, of } = bestReps(reps, 3);
  expect(best.map(({ repId }) => repId)).toEqual([7, 8, 5]);
  expect(of).toBe(4);
  expect(bestReps([], 3)).toEqual({ reps: [], of: 0 });
});

import { describe, expect, test } from 'vitest';
import { promotionStage } from '../../../src/drill/plan/promotion-stage.ts';

const RULE = { inCorridorReps: 8, ofHiddenReps: 10, corridorShare: 0.6 };
const reps = (count: number, inCorridor: number): number[] => Array(count).fill(inCorridor);
const stage = (overTime: readonly number[], paced: readonly number[] | null = []) =>
  promotionStage(overTime, paced, RULE);

describe('promotion', () => {
  test('starts over time', () => {
    expect(stage([])).toBe('over time');
    expect(stage(reps(7, 1))).toBe('over time');
  });

  test('eight hidden reps out of the last ten in the corridor earn the pace of the steering', () => {
    expect(stage([...reps(2, 0.59), ...reps(8, 0.6)])).toBe('paced by the steering');
    expect(stage([...reps(3, 0.59), ...reps(7, 0.6)])).toBe('over time');
  });

  test('eight of those earn the live car', () => {
    expect(stage(reps(8, 0.8), reps(8, 0.6))).toBe('live car');
    expect(stage(reps(8, 0.8), [...reps(3, 0.59), ...reps(7, 0.9)])).toBe('paced by the steering');
  });

  test('without a wheel the step between is left out', () => {
    expect(stage(reps(8, 0.8), null)).toBe('live car');
    expect(stage(reps(7, 0.8), null)).toBe('over time');
  });

  test('only the last reps count: it is lost again where the foot has lost it', () => {
    expect(stage([...reps(20, 1), ...reps(3, 0)], reps(10, 1))).toBe('over time');
    expect(stage(reps(8, 1), [...reps(20, 1), ...reps(3, 0)])).toBe('paced by the steering');
  });
});

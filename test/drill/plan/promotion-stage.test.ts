import { describe, expect, test } from 'vitest';
import { type HiddenRep, promotionStage } from '../../../src/drill/plan/promotion-stage.ts';

const RULE = { inCorridorReps: 8, ofHiddenReps: 10, corridorShare: 0.6 };
const reps = (count: number, inCorridor: number, steeringLagErrorS: number | null): HiddenRep[] =>
  Array.from({ length: count }, () => ({ inCorridor, steeringLagErrorS }));
const stage = (...hidden: readonly HiddenRep[][]) => promotionStage(hidden.flat(), RULE);

describe('promotion', () => {
  test('starts over time', () => {
    expect(stage()).toBe('over time');
    expect(stage(reps(7, 1, 0))).toBe('over time');
  });

  test('eight hidden reps out of the last ten in the corridor earn the pace of the steering', () => {
    expect(stage(reps(2, 0.59, 0.3), reps(8, 0.6, 0.3))).toBe('paced by the steering');
    expect(stage(reps(3, 0.59, 0.3), reps(7, 0.6, 0.3))).toBe('over time');
  });

  test('eight of them with the wheel earn the live car', () => {
    expect(stage(reps(8, 0.8, 0.1))).toBe('live car');
    expect(stage(reps(8, 0.8, -0.1))).toBe('live car');
    expect(stage(reps(1, 0.8, 0.11), reps(7, 0.8, 0.1))).toBe('paced by the steering');
    expect(stage(reps(8, 0.8, -0.11))).toBe('paced by the steering');
  });

  test('without a wheel the step between is left out', () => {
    expect(stage(reps(8, 0.8, null))).toBe('live car');
  });

  test('only the last reps count: it is lost again where the foot has lost it', () => {
    expect(stage(reps(20, 1, 0), reps(3, 0, null))).toBe('over time');
    expect(stage(reps(20, 0, null), reps(8, 1, 0))).toBe('live car');
  });
});

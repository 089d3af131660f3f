import { describe, expect, test } from 'vitest';
import type { LiveMeasures } from '../../src/score/live-measures.ts';
import type { RepOutcome, RepScore } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { type SharedTrouble, sharedTroubles } from '../../src/score/shared-trouble.ts';
import { type BrakingShape, braking, record, SHAPE, shapeTarget } from './curves.ts';

const target = shapeTarget(SHAPE);
const rep = (change: Partial<BrakingShape> = {}): RepScore => {
  const outcome = scoreRep(record(braking({ ...SHAPE, ...change })), target);
  if (outcome.kind !== 'scored') throw new Error('not scored');
  return outcome;
};
const right = rep();
const first = (outcomes: readonly RepOutcome[], units?: 'imperial'): SharedTrouble | null =>
  sharedTroubles(outcomes, units)[0] ?? null;
const none = scoreRep(
  record(() => 0),
  target,
);

describe('what reps share that costs most', () => {
  test('nothing, where nothing is outside its band or only two share it', () => {
    expect(first([])).toBeNull();
    expect(first([right, right, right, none])).toBeNull();
    const slow = rep({ riseS: 0.3 });
    expect(first([slow, slow, right, right])).toBeNull();
  });

  test('a release, in as many reps as have it', () => {
    // 1.2 s where the target takes 1.5 s
    const quick = rep({ releaseS: 1.2 });
    const found = first([quick, right, quick, quick]);
    expect(found).toEqual({ part: 'release', words: '20 % too quick off the brake', reps: 3 });
  });

  test('a hit, by the middle of those reps', () => {
    const hits = [-0.1, -0.12, -0.2].map((peakError) => hit({ peakError }));
    const found = first([...hits, right, hit({ peakError: 0.3 })]);
    expect(found).toEqual({ part: 'hit', words: 'hit 12 % too light', reps: 3 });
    const slow = hit({ riseErrorS: 0.08 });
    expect(first([slow, slow, slow])?.words).toBe('80 ms too slow to the peak');
  });

  test('going back up', () => {
    const back = {
      ...right,
      reapplied: 0.1,
      reapplications: 1,
      pointsLost: { ...right.pointsLost, smooth: 12 },
    };
    expect(first([back, back, right, back])).toEqual({
      part: 'smooth',
      words: 'back on the brake during the release',
      reps: 3,
    });
  });

  test('a brake point of the live car, told in metres, one early among the late left out', () => {
    const braked = [4, 7, 5, -6].map((metres) => live({ brakePointErrorM: metres }));
    expect(first(braked)).toEqual({
      part: 'brake point',
      words: 'braked 5 m late',
      reps: 3,
    });
  });

  test('of several the one that costs most points, whatever number of reps has it', () => {
    const quick = rep({ releaseS: 1.2 });
    const both = (lostS: number): RepScore => ({
      ...quick,
      peakError: -0.3,
      pointsLost: { release: 8, hit: lostS, smooth: 0 },
    });
    expect(first([both(20), both(20), both(20), quick])?.part).toBe('hit');
    expect(first([both(3), both(3), both(3), quick])?.part).toBe('release');
  });

  test('a corner entered far too fast comes before it, in the units asked for', () => {
    // 30 m/s instead of 25: a fifth too fast; 5 m/s are 18 km/h or 11 mph
    const fast = live({ brakePointErrorM: 5, slowestSpeedMps: 30, slowestSpeedErrorMps: 5 });
    expect(first([fast, fast, fast])).toEqual({
      part: 'slowest speed',
      words: '18 km/h too fast at the slowest point',
      reps: 3,
    });
    expect(first([fast, fast, fast], 'imperial')?.words).toMatch(/^11 mph too fast/);
    expect(sharedTroubles([fast, fast, fast]).map(({ words }) => words)).toEqual([
      '18 km/h too fast at the slowest point',
      'braked 5 m late',
    ]);
  });

  test('what leads the other way is not told behind a speed', () => {
    // braking early makes a car slow, a light hit makes it fast
    const fast = live({ brakePointErrorM: -5, slowestSpeedMps: 30, slowestSpeedErrorMps: 5 });
    const parts = (reps: readonly RepOutcome[]): string[] =>
      sharedTroubles(reps).map(({ part }) => part);
    expect(parts([fast, fast, fast])).toEqual(['slowest speed']);
    const light = { ...fast, peakError: -0.3 };
    expect(parts([light, light, light])).toEqual(['slowest speed', 'hit']);
  });
});

function hit(change: Partial<RepScore>): RepScore {
  return { ...right, ...change, pointsLost: { ...right.pointsLost, hit: 9 } };
}

/** As far off in time as 50 m/s make it. */
function live(change: Partial<LiveMeasures>): RepScore {
  const measures = {
    brakePointErrorM: 0,
    slowestSpeedMps: 25,
    slowestSpeedErrorMps: 0,
    ...change,
  };
  return {
    ...right,
    pointsLost: { ...right.pointsLost, brakePoint: 5 },
    live: { ...measures, brakePointErrorS: measures.brakePointErrorM / 50 } as LiveMeasures,
  };
}

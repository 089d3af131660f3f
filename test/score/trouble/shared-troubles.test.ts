import { describe, expect, test } from 'vitest';
import { describeOutcome } from '../../../src/score/describe-outcome.ts';
import type { LiveMeasures } from '../../../src/score/live-measures.ts';
import type { RepOutcome, RepScore } from '../../../src/score/rep-score.ts';
import { scoreRep } from '../../../src/score/score-rep.ts';
import { type SharedTrouble, sharedTroubles } from '../../../src/score/trouble/shared-troubles.ts';
import { MEASURES } from '../../screens/live/sample-live.ts';
import { type BrakingShape, braking, record, SHAPE, shapeTarget } from '../curves.ts';

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
    expect(found).toEqual({
      part: 'release',
      words: '20 % too quick off the brake',
      // the estimator's release starts at 90 %: a fifth of 0.9 times 1.5 s is 270 ms, within a grid step or two
      change: expect.stringMatching(/^take 2[67]0 ms more over the release$/),
      reps: 3,
      of: 4,
    });
  });

  test('a hit, by the middle of those reps', () => {
    const hits = [-0.1, -0.12, -0.2].map((peakError) => hit({ peakError }));
    const found = first([...hits, right, hit({ peakError: 0.3 })]);
    expect(found).toEqual({
      part: 'hit',
      words: 'hit 12 % too light',
      change: 'hit 12 % harder',
      reps: 3,
      of: 5,
    });
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
      change: 'only ease once you release: do not go back on the brake',
      reps: 3,
      of: 4,
    });
  });

  test('a brake point of the live car, told in metres, one early among the late left out', () => {
    const braked = [4, 7, 5, -6].map((metres) => live({ brakePointErrorM: metres }));
    expect(first(braked)).toEqual({
      part: 'brake point',
      words: 'braked 5 m late',
      change: 'brake 5 m earlier',
      reps: 3,
      of: 4,
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
      change: 'be 18 km/h slower at the slowest point',
      reps: 3,
      of: 3,
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

describe('what only some reps show', () => {
  const lost = (points: Partial<RepScore['pointsLost']>): Partial<RepScore> => ({
    pointsLost: { release: 0, hit: 0, smooth: 0, brakePoint: 0, ...points },
  });
  const told = (outcomes: readonly RepOutcome[]) =>
    sharedTroubles(outcomes).map(({ part, words, change }) => [part, words, change]);
  const three = <One>(one: One): readonly One[] => [one, one, one];

  test('a release of another shape is told by the moment that its reps missed', () => {
    const none = { startOfRelease: 0, halfRelease: 0, finalRelease: 0, brakeOff: 0 };
    const shape = {
      kind: 'shape',
      timingS: 0,
      rateRatio: 1,
      amountRatio: 1,
      explained: 0,
    } as const;
    const bent = { ...right, ...lost({ release: 9 }), cause: shape, keyPointErrorsS: none };
    const early = { ...bent, keyPointErrorsS: { ...none, halfRelease: -0.12 } };
    expect(told(three(early))).toEqual([
      ['release', 'at half pressure 120 ms early', 'come to half pressure 120 ms later'],
    ]);
    expect(told(three(bent))[0]?.[2]).toContain('one even release');
  });

  test('a brake never let go, where as many reps have it as have a cause', () => {
    const quick = rep({ releaseS: 1.2 });
    const held: RepScore = { ...quick, flags: ['not-released'], ...lost({ release: 40 }) };
    expect(told(three(held))[0]).toEqual([
      'release',
      'the brake was never fully released',
      'come all the way off the brake',
    ]);
    expect(told([...three(held), quick])[0]?.[1]).toMatch(/too quick/);
  });

  test('locked wheels come before a speed that is far off where they cost most, at the middle of their places', () => {
    const locked = (fromM: number): RepScore =>
      live(
        {
          lockUps: [{ kind: 'lock-up', axle: 'front', fromM, fromS: 1, toM: 0, toS: 2 }],
          lockedS: 1,
          slowestSpeedMps: 30,
          slowestSpeedErrorMps: 5,
        },
        { ...lost({ smooth: 15 }), parts: { ...right.parts, smooth: 0.2 } },
      );
    expect(told([locked(-46), locked(-30), locked(-44.4)])).toEqual([
      [
        'smooth',
        'front wheels locked 44 m before turn-in',
        'less pressure 44 m before turn-in, where the front wheels lock',
      ],
    ]);
    // 44.4 m are 145.7 ft
    const [imperial] = sharedTroubles(three(locked(-44.4)), 'imperial');
    expect(imperial?.words).toBe('front wheels locked 146 ft before turn-in');
  });

  test('an over-rev, with how much later it would have been safe', () => {
    const shift = { fromGear: 4, toGear: 3, verdict: 'over-rev', rpm: 9000, atM: -40 } as const;
    const early = [-32, -28, -20].map((earliestM) => live({ shifts: [{ ...shift, earliestM }] }));
    expect(told(early)).toEqual([
      ['gears', 'over-revved in gear 3: 12 m later is safe', 'go down to gear 3 later, by 12 m'],
    ]);
    const missed = live({ missedDownshifts: 1 });
    expect(told(three(missed))[0]).toEqual([
      'gears',
      '1 downshift missing',
      'make every downshift of the target',
    ]);
  });

  test('reps that were none', () => {
    expect(told([right, none, none, none])[0]).toEqual([
      'no rep',
      'no braking was seen',
      'brake when the cue comes',
    ]);
  });

  test('a speed that is a little off, where there is nothing else', () => {
    // 2 m/s over 23 are 9 %, and 7 km/h
    const fast = live({ slowestSpeedMps: 25, slowestSpeedErrorMps: 2 });
    expect(told(three(fast))).toEqual([
      [
        'slowest speed',
        '7 km/h too fast at the slowest point',
        'be 7 km/h slower at the slowest point',
      ],
    ]);
    const late = { ...fast, live: { ...fast.live!, brakePointErrorM: 5, brakePointErrorS: 0.1 } };
    expect(told(three(late)).map(([part]) => part)).toEqual(['brake point']);
  });

  test('nothing that costs nothing, but behind a speed', () => {
    const light = { ...right, ...lost({}), peakError: -0.05 };
    expect(told(three(light))).toEqual([]);
    const fast = live({ slowestSpeedMps: 30, slowestSpeedErrorMps: 5 }, { peakError: -0.05 });
    expect(told(three(fast)).map(([part]) => part)).toEqual(['slowest speed', 'hit']);
  });
});

describe('what every rep of a block was told', () => {
  // points that each fault may cost, in every order, with and without a speed that is far off
  const COSTS = [5, 10, 20];
  const cases = COSTS.flatMap((release) =>
    COSTS.flatMap((hits) =>
      COSTS.flatMap((brakePoint) =>
        [-4, 0, 4].map((speedErrorMps) => ({ release, hits, brakePoint, speedErrorMps })),
      ),
    ),
  );

  test.each(cases)(
    'is what the block shares: %o',
    ({ release, hits, brakePoint, speedErrorMps }) => {
      const cause = { kind: 'timing', timingS: -0.1, rateRatio: 1, amountRatio: 1, explained: 0.9 };
      const one = live(
        {
          brakePointErrorM: 5,
          slowestSpeedMps: 25 + speedErrorMps,
          slowestSpeedErrorMps: speedErrorMps,
        },
        {
          cause: cause as RepScore['cause'],
          peakError: 0.2,
          pointsLost: { release, hit: hits, smooth: 0, brakePoint: brakePoint + 1 },
        },
      );
      const words = sharedTroubles([one, one, one]).map((trouble) => trouble.words);
      expect(words.join(', ')).toBe(describeOutcome(one));
    },
  );
});

function hit(change: Partial<RepScore>): RepScore {
  return { ...right, ...change, pointsLost: { ...right.pointsLost, hit: 9 } };
}

/** As far off in time as 50 m/s make it. */
function live(change: Partial<LiveMeasures>, of: Partial<RepScore> = {}): RepScore {
  const measures = {
    ...MEASURES,
    brakePointErrorM: 0,
    slowestSpeedMps: 25,
    slowestSpeedErrorMps: 0,
    lockedS: 0,
    ...change,
  };
  return {
    ...right,
    pointsLost: { ...right.pointsLost, brakePoint: 5 },
    live: { ...measures, brakePointErrorS: measures.brakePointErrorM / 50 },
    ...of,
  };
}

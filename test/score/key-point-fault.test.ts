import { describe, expect, test } from 'vitest';
import { describeOutcome } from '../../src/score/describe-outcome.ts';
import { keyPointFault, sharedKeyPointFault } from '../../src/score/key-point-fault.ts';
import { targetReleaseS } from '../../src/score/release-points.ts';
import type { RepScore } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { braking, FALLS, record, SHAPE, shapeTarget } from './curves.ts';

type Errors = RepScore['keyPointErrorsS'];

/** Times of the target, in seconds: the falls through 90, 50 and 10 % of the plateau, and brake off. */
const TARGET = { startOfRelease: 1, halfRelease: 1.4, finalRelease: 2, brakeOff: 2.2 };
const NONE: Errors = { startOfRelease: 0, halfRelease: 0, finalRelease: 0, brakeOff: 0 };

function rep(errors: Partial<Errors>): RepScore {
  const perfect = scoreRep(record(shapeTarget(SHAPE).level.at), shapeTarget(SHAPE));
  if (perfect.kind !== 'scored') throw new Error('not scored');
  const keyPointErrorsS = { ...NONE, ...errors };
  const at = (point: keyof Errors): number | null => {
    const errorS = keyPointErrorsS[point];
    return errorS === null ? null : TARGET[point] + errorS;
  };
  const keyPoints = {
    ...perfect.keyPoints,
    startOfReleaseS: at('startOfRelease'),
    halfReleaseS: at('halfRelease'),
    finalReleaseS: at('finalRelease'),
    brakeOffS: at('brakeOff'),
  };
  return { ...perfect, keyPoints, keyPointErrorsS };
}

describe('the moment that a release missed most', () => {
  test('is the one with the most pressure between rep and target, not with the most time', () => {
    // Shares of the plateau per second, by hand: 0.4/0.4 = 1, then 0.4/0.6 = 2/3, then 0.1/0.2 = 1/2; between them the
    // means: 1, 5/6, 7/12, 1/2. Missed by 0.04, 0.12, 0.15 and 0.17 s that is 4, 10, 8.75 and 8.5 % of the plateau.
    const bent = rep({
      startOfRelease: 0.04,
      halfRelease: -0.12,
      finalRelease: -0.15,
      brakeOff: -0.17,
    });
    expect(keyPointFault(bent, 0.03)).toEqual({ point: 'halfRelease', errorS: -0.12 });
  });

  test('is none within the band, and none where the release never got there', () => {
    expect(keyPointFault(rep({ halfRelease: 0.02 }), 0.03)).toBeNull();
    expect(keyPointFault(rep({ halfRelease: null }), 0.03)).toBeNull();
    expect(keyPointFault(rep({ halfRelease: null, brakeOff: 0.1 }), 0.03)).toEqual({
      point: 'brakeOff',
      errorS: 0.1,
    });
  });

  test('is shared by three reps that missed it the same way, with their median', () => {
    const early = [-0.1, -0.12, -0.2].map((halfRelease) => rep({ halfRelease }));
    const late = [0.1, 0.2].map((halfRelease) => rep({ halfRelease }));
    expect(sharedKeyPointFault([...late, ...early], 0.03)).toEqual({
      fault: { point: 'halfRelease', errorS: -0.12 },
      reps: early,
    });
    expect(sharedKeyPointFault([...late, ...early.slice(1)], 0.03)).toBeNull();
  });

  test('is the dearest of those that most missed the same way, where each missed another one most', () => {
    // by the shares per second above, half and brake off early: 8.3 and 4, 6.7 and 8, 5.8 and 8.5 % of the plateau
    const reps = [
      rep({ halfRelease: -0.1, brakeOff: -0.08 }),
      rep({ halfRelease: -0.08, brakeOff: -0.16 }),
      rep({ startOfRelease: 0.2, halfRelease: -0.07, brakeOff: -0.17 }),
    ];
    expect(sharedKeyPointFault(reps, 0.03)).toEqual({
      fault: { point: 'brakeOff', errorS: -0.16 },
      reps,
    });
    // three of six are not most of them
    expect(sharedKeyPointFault([...reps, rep({}), rep({}), rep({})], 0.03)).toBeNull();
  });

  test('lies on a target whose release takes 1.2 s, whatever the rep took', () => {
    expect(targetReleaseS([rep({}), rep({ startOfRelease: 0.3, brakeOff: -0.3 })])).toBeCloseTo(
      1.2,
      12,
    );
    expect(targetReleaseS([rep({ brakeOff: null })])).toBeNull();
  });
});

describe('a rep of another shape', () => {
  test('is told by that moment', () => {
    // The target falls evenly over 1.5 s; the rep has fallen to half after 0.36 of it and to a tenth after 0.95:
    // 0.14 of 1.5 s is 210 ms early, 0.05 of it 75 ms late.
    const bent = (u: number): number => {
      if (u < 0.36) return 1 - (0.5 * u) / 0.36;
      return u < 0.95 ? 0.5 - (0.4 * (u - 0.36)) / 0.59 : 0.1 - (0.1 * (u - 0.95)) / 0.05;
    };
    const driven = braking({ ...SHAPE, fall: bent });
    const outcome = scoreRep(record(driven), shapeTarget({ ...SHAPE, fall: FALLS.straight }));
    expect(outcome).toMatchObject({ cause: { kind: 'shape' } });
    expect(describeOutcome(outcome)).toBe('at half pressure 210 ms early');
  });
});

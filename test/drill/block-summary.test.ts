import { describe, expect, test } from 'vitest';
import { blockAdvice } from '../../src/drill/block-advice.ts';
import { blockSummary } from '../../src/drill/block-summary.ts';
import type { DoneRep } from '../../src/drill/drill-model.ts';
import type { RepLine } from '../../src/drill/drill-view.ts';
import { repLine } from '../../src/drill/rep-line.ts';
import { summaryLines } from '../../src/drill/summary-lines.ts';
import type { Cause, RepOutcome, RepScore } from '../../src/score/rep-score.ts';
import { sharedTroubles } from '../../src/score/trouble/shared-troubles.ts';
import { MEASURES } from '../screens/live/sample-live.ts';
import { NEVER_BRAKED, RAMP } from './drill-rig.ts';

const QUICK: Cause = { kind: 'rate', timingS: 0, rateRatio: 0.8, amountRatio: 1, explained: 0.9 };

function scored(score: number, change: Partial<RepScore> = {}): RepScore {
  return {
    kind: 'scored',
    version: 1,
    score,
    parts: { release: 0.62, hit: 0.94, smooth: 0.88 },
    pointsLost: { release: 25, hit: 1, smooth: 3 },
    releaseErrorLevel: 0.05,
    averageErrorLevel: -0.02,
    onOffErrorLevel: 0.14,
    inCorridor: 0.5,
    peakError: 0,
    riseErrorS: 0,
    reapplications: 0,
    reapplied: 0,
    rateRatio: 1.2,
    smoothnessDifference: 0,
    keyPoints: {
      onsetS: 0,
      peakS: 0.1,
      peakLevel: 0.8,
      nearPeakS: 0.09,
      startOfReleaseS: 0.4,
      halfReleaseS: 0.9,
      finalReleaseS: 1.3,
      brakeOffS: 1.4,
    },
    keyPointErrorsS: { startOfRelease: 0, halfRelease: 0, finalRelease: 0, brakeOff: 0 },
    cause: QUICK,
    side: {
      startErrorS: 0,
      liftToHitS: null,
      overlapS: null,
      restingLevel: 0,
      shiftRippleLevel: null,
      steeringLagS: null,
    },
    live: null,
    flags: [],
    ...change,
  };
}

/** @param level over the whole rep but the last moment before brake off */
function done(outcome: DoneRep['outcome'], level: number | null, place = 1): DoneRep {
  const tag = { number: place, place, block: 1, phase: 'block', feedback: 'shown' } as const;
  const voided = outcome === null ? 'aborted' : null;
  return {
    tag,
    outcome,
    voided,
    call: null,
    sentence: voided === null ? '20 % too quick off the brake' : 'Aborted by the driver.',
    glance: [],
    warning: null,
    revealAtS: 0,
    rating: null,
    curve: level === null ? null : new Float64Array(GRID_PLACES).fill(level),
    gridTarget: RAMP,
    drawn: null,
  };
}

/** From the rise of the ramp to 0.25 s after its brake off in steps of 5 ms. */
const GRID_PLACES = 1.65 / 0.005 + 1;

const BLOCK = [
  done(scored(70, { releaseErrorLevel: 0.04, averageErrorLevel: -0.03 }), 0.4),
  done(NEVER_BRAKED, null),
  done(scored(80, { averageErrorLevel: 0.01 }), 0.5),
  done(null, null),
  done(scored(90, { releaseErrorLevel: 0.06, averageErrorLevel: -0.04 }), 0.6),
];

describe('a block', () => {
  const summary = blockSummary(BLOCK, RAMP);

  test('has the median of all scored reps, a rep without braking counting 0, and the aborts', () => {
    expect(summary).toMatchObject({ reps: 4, aborted: 1, medianScore: 75 });
  });

  test('has error, average error and spread of the reps that were measured', () => {
    expect(summary.medianReleaseErrorLevel).toBe(0.05);
    expect(summary.averageErrorLevel).toBeCloseTo(-0.02, 12);
    // 0.4, 0.5 and 0.6 everywhere
    expect(summary.spreadLevel).toBeCloseTo(0.1, 12);
  });

  test('names the cause that three reps share and says what to change', () => {
    expect(summary).toMatchObject({ cause: { kind: 'rate' }, causeReps: 3 });
    // the target's release takes 1.0 s, a rep that is 20 % too quick 0.8 s
    expect(summary.sentence).toBe('Next block: take 200 ms more over the release.');
    const two = blockSummary(BLOCK.slice(0, 4), RAMP);
    expect(two).toMatchObject({ cause: null, causeReps: 0, spreadLevel: null });
  });

  test('of nothing has no numbers', () => {
    expect(blockSummary([], RAMP)).toMatchObject({
      reps: 0,
      medianScore: null,
      medianReleaseErrorLevel: null,
      averageErrorLevel: null,
      spreadLevel: null,
    });
  });
});

describe('advice', () => {
  const NO_FAULT: Cause = { ...QUICK, kind: 'timing', rateRatio: 1 };
  const NO_ERRORS = { startOfRelease: 0, halfRelease: 0, finalRelease: 0, brakeOff: 0 };
  const reps = (change: Partial<RepScore> = {}) => [1, 2, 3].map(() => scored(70, change));
  const advice = (of: readonly RepOutcome[]): string => blockAdvice(of, sharedTroubles(of));

  test('is what to do about what the reps share, what comes first first', () => {
    expect(advice(reps())).toBe('Next block: take 200 ms more over the release.');
    // 3 of 25 m/s are 10.8 km/h
    const live = { ...MEASURES, slowestSpeedMps: 25, slowestSpeedErrorMps: 3 };
    expect(advice(reps({ live }))).toBe(
      'Next block: be 11 km/h slower at the slowest point; take 200 ms more over the release.',
    );
  });

  test('is of the hit where that cost more than the release', () => {
    const light = { peakError: -0.2, pointsLost: { release: 5, hit: 15, smooth: 0 } };
    expect(advice(reps(light))).toBe('Next block: hit 20 % harder.');
  });

  test('corrects nothing that cannot be felt', () => {
    const same = 'Nothing to correct: do the same again.';
    expect(advice(reps({ cause: { ...NO_FAULT, timingS: 0.01 } }))).toBe(same);
    expect(advice(reps({ cause: null }))).toBe(same);
  });

  test('asks for the same release where no three reps have anything in common', () => {
    const early = { ...NO_FAULT, timingS: -0.1 };
    const mixed = [{ ...early }, { ...early, timingS: 0.1 }, QUICK, { ...QUICK, rateRatio: 1.3 }];
    const outcomes = mixed.map((cause) => scored(70, { cause, keyPointErrorsS: NO_ERRORS }));
    expect(advice(outcomes)).toContain('the same release every time');
    expect(advice(outcomes.slice(2))).toContain('Three scored reps or more');
  });

  test('tells what it is about in the lines of the block, but for the cause that stands there anyway', () => {
    const live = { ...MEASURES, slowestSpeedMps: 25, slowestSpeedErrorMps: 3 };
    const block = [1, 2, 3].map((place) => done(scored(70, { live }), 0.4, place));
    const lines = summaryLines(blockSummary([...block, done(scored(70), 0.4, 4)], RAMP));
    expect(lines).toContain('  11 km/h too fast at the slowest point, 3 of 3 reps');
    expect(lines.filter((line) => line.includes('too quick'))).toHaveLength(1);
  });
});

describe('plain text', () => {
  const line = (rep: DoneRep) => {
    const { tag, ...rest } = rep;
    return repLine({
      ...rest,
      targetName: null,
      warning: null,
      number: tag.place,
      feedback: tag.feedback,
    });
  };

  test('of a rep is its score, its parts and one sentence', () => {
    expect(line(done(scored(71.4, { reapplications: 2 }), null, 5))).toBe(
      'rep  5  shown         score  71  release  62  hit  94  smooth  88  re-applied 2  20 % too quick off the brake',
    );
  });

  test('of a rep that cannot be read yet shows nothing of it', () => {
    const held = {
      number: 4,
      targetName: null,
      warning: null,
      feedback: 'hidden',
      outcome: null,
      voided: null,
      call: null,
      sentence: '',
      glance: [],
    } as const;
    expect(repLine(held)).toBe('rep  4  hidden        ··');
  });

  test('of a rep with a late call says which', () => {
    const rep = { number: 3, feedback: 'shown', outcome: scored(70), voided: null, sentence: '' };
    const text = repLine({ ...rep, call: 'car inside' } as RepLine);
    expect(text).toMatch(/re-applied \d+ {2}called car inside$/);
    expect(repLine({ ...rep, call: null } as RepLine)).not.toContain('called');
  });

  test('of a void rep says why', () => {
    expect(line(done(null, null, 2))).toBe(
      'rep  2  shown         does not count (aborted)  Aborted by the driver.',
    );
  });

  test('of a block without a spread says why: too few reps, or reps that were varied or called', () => {
    const said = (reps: number): readonly string[] =>
      summaryLines(
        blockSummary(
          Array.from({ length: reps }, (_, i) => done(scored(70), null, i + 1)),
          RAMP,
        ),
      ).slice(1, 3);
    const errors = '  release error 5.0 % of full scale  average error 2.0 % light';
    expect(said(2)).toEqual([errors, '  spread from three reps on']);
    expect(said(5)).toEqual([errors, '  no spread: under three reps unvaried and uncalled']);
  });

  test('of a block is its numbers, its cause and what to change', () => {
    const lines = summaryLines(blockSummary(BLOCK, RAMP));
    // exact interval of 3 hits in 3 trials: 29.24 to 100 %
    expect(lines.slice(0, 4)).toEqual([
      'block  4 reps scored, 1 aborted  median score 75',
      '  release error 5.0 % of full scale  average error 2.0 % light  spread 10.0 %',
      '  likely rate: 20 % too quick off the brake, 3 of 3 reps (29 to 100 %)',
      '  phase        average error (95 %)    spread  cause',
    ]);
    // 0.5 on average where the ramp falls from 0.8 to 0.4, with deviation 0.1: 4.3027 * 0.1 / root of 3
    expect(lines[5]).toBe(
      '  100 to 50 %  -10.2 % (-35.0 to +14.6) 10.0 %  amount, 38 % light in 3 of 3',
    );
    for (const text of lines) expect(text.length).toBeLessThanOrEqual(80);
    expect(lines.at(-1)).toBe('Next block: take 200 ms more over the release.');
    expect(summaryLines(blockSummary([done(null, null)], RAMP))).toEqual([
      'block  0 reps scored, 1 aborted',
    ]);
  });
});

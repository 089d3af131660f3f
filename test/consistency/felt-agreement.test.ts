import { describe, expect, test } from 'vitest';
import { feltAgreement, type RatedRep } from '../../src/consistency/felt-agreement.ts';
import { aScore, NO_REP } from '../history/fixtures.ts';

function rep(selfRating: string | null, lateS: number, peakError = 0): RatedRep {
  const outcome = aScore({
    peakError,
    keyPointErrorsS: { startOfRelease: lateS, halfRelease: 0, finalRelease: 0, brakeOff: 0 },
  });
  return { feedback: 'hidden', selfRating, outcome };
}

const times = (count: number, one: RatedRep): RatedRep[] =>
  Array.from({ length: count }, () => one);
/** Felt early, right and late three times each, as measured but for one early that was late. */
const REPS = [
  ...times(3, rep('early right', -0.05)),
  rep('early right', 0.05),
  ...times(3, rep('right right', 0.02)),
  ...times(3, rep('late right', 0.05)),
];

describe('felt against measured', () => {
  test('is weighted kappa: one of ten is two steps out', () => {
    // disagreement seen 2 / 10; expected from rows 4, 3, 3 and columns 3, 3, 4 of ten:
    // (4 * 3 + 3 * 3 + 3 * 3 + 3 * 4 + 2 * (4 * 4 + 3 * 3)) / 100 = 0.92
    const { ratings, timing } = feltAgreement(REPS);
    expect(ratings).toBe(10);
    expect(timing?.kappa).toBeCloseTo(1 - 0.2 / 0.92, 12);
  });

  test('is not known where one word fits all, or under ten ratings', () => {
    expect(feltAgreement(REPS).amount).toBeNull();
    expect(feltAgreement(REPS.slice(1))).toEqual({
      ratings: 9,
      needed: 10,
      timing: null,
      amount: null,
    });
  });

  test('a difference within the narrowest band is right', () => {
    const edge = (lateS: number, peak: number) => [
      ...times(5, rep('right right', lateS, peak)),
      ...times(5, rep('late heavy', 0.2, 0.3)),
    ];
    expect(feltAgreement(edge(0.03, 0.07)).timing?.kappa).toBe(1);
    expect(feltAgreement(edge(0.031, 0.071)).timing?.kappa).toBe(0);
    expect(feltAgreement(edge(0.031, 0.071)).amount?.kappa).toBe(0);
  });

  test('shown, unrated, void and unmeasured reps are left out', () => {
    const others: RatedRep[] = [
      { ...rep('late right', -0.2), feedback: 'shown' },
      rep(null, 0.1),
      rep('late', 0.1),
      { ...rep('late right', 0), outcome: NO_REP },
      { ...rep('late right', 0), outcome: null },
    ];
    expect(feltAgreement([...others, ...REPS])).toEqual(feltAgreement(REPS));
  });
});

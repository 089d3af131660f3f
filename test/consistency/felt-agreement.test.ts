import { describe, expect, test } from 'vitest';
import {
  addedCounts,
  agreementIn,
  type FeltAgreement,
  feltCounts,
} from '../../src/consistency/felt-agreement.ts';
import type { RepMeasure } from '../../src/consistency/rep-measure.ts';
import { aMeasure, NOTHING, repsOf, someNumbers, times } from './rep-measures.ts';

const feltAgreement = (reps: readonly RepMeasure[]): FeltAgreement =>
  agreementIn(feltCounts(repsOf(reps), () => 'all').get('all') ?? addedCounts([]));

function rep(selfRating: string | null, lateS: number, peakError = 0): RepMeasure {
  const numbers = someNumbers({ startOfReleaseErrorS: lateS, peakError });
  return aMeasure({ feedback: 'hidden', selfRating, numbers });
}

const same = (count: number, one: RepMeasure): RepMeasure[] => times(count, () => one);
/** Felt early, right and late six times each, as measured, and two felt early that were late. */
const REPS = [
  ...same(6, rep('early right', -0.05)),
  ...same(2, rep('early right', 0.05)),
  ...same(6, rep('right right', 0.02)),
  ...same(6, rep('late right', 0.05)),
];

describe('felt against measured', () => {
  test('is weighted kappa: two of twenty are two steps out', () => {
    // disagreement seen 4 / 20; expected from rows 8, 6, 6 and columns 6, 6, 8 of twenty, as of 4, 3, 3 and 3, 3, 4 of ten:
    // (4 * 3 + 3 * 3 + 3 * 3 + 3 * 4 + 2 * (4 * 4 + 3 * 3)) / 100 = 0.92
    const { ratings, timing } = feltAgreement(REPS);
    expect(ratings).toBe(20);
    expect(timing?.kappa).toBeCloseTo(1 - 0.2 / 0.92, 12);
  });

  test('is not known where one word fits all, or under twenty ratings', () => {
    expect(feltAgreement(REPS).amount).toBeNull();
    expect(feltAgreement(REPS.slice(1))).toEqual({
      ratings: 19,
      needed: 20,
      timing: null,
      amount: null,
    });
  });

  test('a difference within the narrowest band is right', () => {
    const edge = (lateS: number, peak: number) => [
      ...same(10, rep('right right', lateS, peak)),
      ...same(10, rep('late heavy', 0.2, 0.3)),
    ];
    expect(feltAgreement(edge(0.03, 0.07)).timing?.kappa).toBe(1);
    expect(feltAgreement(edge(0.03, 0.07)).amount?.kappa).toBe(1);
    // all are late and heavy then, and one category alone says nothing
    expect(feltAgreement(edge(0.031, 0.071)).timing).toBeNull();
    expect(feltAgreement(edge(0.031, 0.071)).amount).toBeNull();
  });

  test('shown, unrated, void and unmeasured reps are left out', () => {
    const others: RepMeasure[] = [
      { ...rep('late right', -0.2), feedback: 'shown' },
      rep(null, 0.1),
      rep('late', 0.1),
      { ...rep('late right', 0), numbers: NOTHING },
      { ...rep('late right', 0), numbers: null, voided: 'aborted' },
    ];
    expect(feltAgreement([...others, ...REPS])).toEqual(feltAgreement(REPS));
  });
});

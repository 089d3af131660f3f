import { describe, expect, test } from 'vitest';
import { pooledSpread } from '../../../src/consistency/change/pooled-spread.ts';
import {
  REPS_FOR_SPREAD_CHANGE,
  spreadChange,
} from '../../../src/consistency/change/spread-change.ts';
import { verdict } from '../../../src/consistency/change/verdict.ts';
import { worthwhileChange } from '../../../src/consistency/change/worthwhile-change.ts';
import { weightedKappa } from '../../../src/consistency/summary/weighted-kappa.ts';
import { gaussian, seededRandom } from '../../../src/drill/seeded-random.ts';
import { times } from '../rep-measures.ts';

/** So many values of this deviation whose tails are no heavier than normal: half above, half below. */
const twoSided = (count: number, deviation: number, centre = 0): number[] => {
  const reach = deviation * Math.sqrt((count - 1) / count);
  return times(count, (i) => centre + (i % 2 === 0 ? reach : -reach));
};

describe('the words', () => {
  test.each([
    [-2, -1, 0, 'improving'],
    [-2, 1, 0, 'no clear change'],
    [1, 2, 0, 'worsening'],
    [0.5, 0.9, 1, 'improving'],
    [0.5, 1, 1, 'no clear change'],
    [1.01, 3, 1, 'worsening'],
  ])('of %d to %d against %d', (low, high, none, expected) =>
    expect(verdict({ low, high }, none)).toBe(expected),
  );
});

describe('a change of spread', () => {
  test('has the interval of the F test', () => {
    // NIST/SEMATECH e-Handbook 7.3.2 and 1.3.5.9; F(0.975; 35, 35) = 1.9611 by SciPy
    const found = spreadChange([twoSided(36, 4)], [twoSided(36, 3)]);
    expect(found.before.deviation).toBeCloseTo(4, 12);
    expect(found.now.deviation).toBeCloseTo(3, 12);
    expect(found.ratio).toBeCloseTo(0.75, 12);
    expect(found.ratioInterval!.low).toBeCloseTo(0.75 / Math.sqrt(1.961089), 5);
    expect(found.ratioInterval!.high).toBeCloseTo(0.75 * Math.sqrt(1.961089), 5);
    expect(found.verdict).toBe('no clear change');
  });

  test('by 30 % is seen from 35 reps on each side, as said, in both directions', () => {
    const [wide, narrow] = [1, 0.69].map((deviation) =>
      times(2, () => twoSided(18, deviation)),
    ) as [number[][], number[][]];
    expect(spreadChange(wide, narrow).verdict).toBe('improving');
    expect(spreadChange(narrow, wide).verdict).toBe('worsening');
    const [fewWide, fewNarrow] = [[twoSided(30, 1)], [twoSided(30, 0.7)]];
    expect(spreadChange(fewWide, fewNarrow).ratioInterval!.high).toBeGreaterThan(1);
  });

  test('is not claimed below 35 reps however large it is, and says how many are missing', () => {
    const found = spreadChange([twoSided(40, 10)], [twoSided(34, 1)]);
    expect(found.ratioInterval!.high).toBeLessThan(0.2);
    expect(found.verdict).toBeNull();
    expect([found.before.missing, found.now.missing]).toEqual([0, 1]);
    expect(spreadChange([], [[3]])).toEqual({
      before: { deviation: null, interval: null, reps: 0, missing: REPS_FOR_SPREAD_CHANGE },
      now: { deviation: null, interval: null, reps: 0, missing: REPS_FOR_SPREAD_CHANGE },
      ratio: null,
      ratioInterval: null,
      verdict: null,
      hangsOnOne: false,
    });
  });

  test('has each side’s own degrees of freedom where the sides are not alike', () => {
    // F(0.975; 9, 19) = 2.880052 and F(0.975; 19, 9) = 3.683338 by SciPy 1.17
    const { ratioInterval } = spreadChange([twoSided(20, 1)], [twoSided(10, 1)]);
    expect(ratioInterval!.low).toBeCloseTo(1 / Math.sqrt(2.880052), 6);
    expect(ratioInterval!.high).toBeCloseTo(Math.sqrt(3.683338), 6);
  });

  // deviations of 1, 1, 1 and 4: together sqrt(19/4) = 2.18; without the last nothing is left of it
  test('is not claimed where one practice makes up most of it, or is all there is of a side', () => {
    const calm = times(4, () => twoSided(20, 1));
    const wild = [...times(3, () => twoSided(20, 1)), twoSided(20, 4)];
    for (const sides of [
      [calm, wild],
      [wild, calm],
    ] as const)
      expect(spreadChange(...sides)).toMatchObject({
        verdict: 'no clear change',
        hangsOnOne: true,
      });
    expect(spreadChange(calm, [twoSided(60, 3)])).toMatchObject({ hangsOnOne: true });
    const worse = times(4, () => twoSided(20, 2));
    expect(spreadChange(calm, worse)).toMatchObject({ verdict: 'worsening', hangsOnOne: false });
    expect(spreadChange(worse, calm)).toMatchObject({ verdict: 'improving', hangsOnOne: false });
    expect(spreadChange(calm, calm).hangsOnOne).toBe(false);
  });

  // E (x - mean of n)^4 = 3 (1 - 1/n)^2 for normal values: without the correction groups of three seem to have no tails
  test('of values that are all the same below zero is none, up to rounding', () => {
    const same = [0.1 + 0.2, 0.3, 0.3].map((value) => -value);
    expect(pooledSpread([same])!.deviation).toBe(0);
    expect(pooledSpread([[-1, -2, -3]])!.deviation).toBeCloseTo(1, 12);
  });

  test('takes normal values in small groups for normal', () => {
    const random = seededRandom(3);
    const groups = times(4000, () => times(3, () => gaussian(random)));
    const { fourthPowers, values, deviation } = pooledSpread(groups)!;
    expect(Math.abs(fourthPowers / values / deviation ** 4 - 3)).toBeLessThan(0.15);
  });

  test('does not see shifts from practice to practice, which cost one rep each', () => {
    const practices = [0, 50, -20, 9].map((centre) => twoSided(10, 2, centre));
    const found = spreadChange(practices, practices);
    expect(found.now.deviation).toBeCloseTo(2, 12);
    expect(found.now).toMatchObject({ reps: 40, missing: 0 });
    expect(spreadChange(practices, practices.slice(0, 3)).now).toMatchObject({
      reps: 30,
      missing: 7,
    });
  });

  test('counts less where a few reps are wild', () => {
    const wild = [...twoSided(36, 1), 12, -12];
    const width = ({ ratioInterval }: ReturnType<typeof spreadChange>): number =>
      ratioInterval!.high / ratioInterval!.low;
    const calm = spreadChange([twoSided(38, 1)], [twoSided(38, 1)]);
    expect(width(spreadChange([wild], [wild]))).toBeGreaterThan(2 * width(calm));
  });

  test('of reps that are all the same is none', () => {
    const same = [times(40, () => 0.02)];
    expect(spreadChange(same, [twoSided(40, 1)])).toMatchObject({ ratio: null, verdict: null });
  });
});

test('a worthwhile change by hand', () => {
  const found = worthwhileChange(2);
  expect(found.smallest).toBeCloseTo(0.6, 12);
  expect(found.clear).toBeCloseTo(0.6 + 1.645 * 2 * Math.SQRT2, 12);
  expect(found.detectable).toBeCloseTo(5.54, 12); // Hopkins 2000: 2.77 typical errors
});

describe('weighted kappa', () => {
  // Cohen (1968), Psychological Bulletin 70:213: two judges, three diagnoses, weights 0 1 3 / 1 0 6 / 3 6 0
  const SHARES = [
    [0.44, 0.07, 0.09],
    [0.05, 0.2, 0.05],
    [0.01, 0.03, 0.06],
  ];
  const WEIGHTS = [
    [0, 1, 3],
    [1, 0, 6],
    [3, 6, 0],
  ];

  test('is that of the paper', () => {
    expect(weightedKappa(SHARES, (i, j) => WEIGHTS[i]![j]!)?.kappa).toBeCloseTo(0.348, 3);
    expect(weightedKappa(SHARES, (i, j) => (i === j ? 0 : 1))?.kappa).toBeCloseTo(0.492, 3);
  });

  test('of nothing is null, and where only one rating was ever given', () => {
    expect(weightedKappa([[0]], () => 1)).toBeNull();
    expect(
      weightedKappa(
        [
          [5, 0],
          [0, 0],
        ],
        (i, j) => Math.abs(i - j),
      ),
    ).toBeNull();
  });
});

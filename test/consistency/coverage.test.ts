import { describe, expect, test } from 'vitest';
import { spreadChange } from '../../src/consistency/change/spread-change.ts';
import type { Interval } from '../../src/consistency/interval.ts';
import { standardDeviation } from '../../src/consistency/standard-deviation.ts';
import { medianInterval } from '../../src/consistency/summary/median-interval.ts';
import { spreadInterval } from '../../src/consistency/summary/spread-interval.ts';
import { mannKendall } from '../../src/consistency/trend/mann-kendall.ts';
import { theilSen } from '../../src/consistency/trend/theil-sen.ts';
import { typicalErrorInterval } from '../../src/consistency/variation/typical-error.ts';
import { gaussian, type RandomSource, seededRandom } from '../../src/drill/seeded-random.ts';
import { times } from './rep-measures.ts';

/*
 * Every interval holds the true value as often as it says, within 2 points. 2500 trials know a share near 95 % to 0.44
 * points (one standard error), so that chance alone does not decide.
 */
const TRIALS = 2500;

function expectCoverage(truth: number, draw: (random: RandomSource) => Interval): void {
  const random = seededRandom(20261125);
  let [held, promised] = [0, 0];
  for (let i = 0; i < TRIALS; i++) {
    const { low, high, level } = draw(random);
    if (low <= truth && truth <= high) held++;
    promised += level;
  }
  expect(
    Math.abs(held - promised) / TRIALS,
    `held ${held / TRIALS}, promised ${promised / TRIALS}`,
  ).toBeLessThanOrEqual(0.02);
}

const normal = (random: RandomSource, count: number): number[] =>
  times(count, () => gaussian(random));
/** Skewed, as release errors are: the logarithm is normal. */
const skewed = (random: RandomSource, count: number): number[] =>
  normal(random, count).map((value) => Math.exp(0.8 * value));
/** Student's t with 10 degrees of freedom times the root of 0.8, so that the variance is 1: kurtosis 4. */
const heavy = (random: RandomSource, count: number): number[] =>
  times(count, () => {
    const chiSquare = normal(random, 10).reduce((sum, value) => sum + value ** 2, 0);
    return (gaussian(random) / Math.sqrt(chiSquare / 10)) * Math.sqrt(0.8);
  });

describe('the interval of a median', () => {
  test.each([4, 5, 8, 12, 25])('of %d skewed values', (count) =>
    expectCoverage(1, (random) => medianInterval(skewed(random, count))!),
  );

  test('at 80 %', () => expectCoverage(0, (random) => medianInterval(normal(random, 15), 0.8)!));
});

describe('the interval of a typical error, with a trend under it', () => {
  test.each([3, 5, 8, 20])('of %d practices', (count) =>
    expectCoverage(2, (random) => {
      const values = normal(random, count).map((value, i) => 2 * value + 0.5 * i);
      return typicalErrorInterval(values)!;
    }),
  );
});

describe('the interval of a spread', () => {
  test.each([5, 10, 40])('of %d values', (count) =>
    expectCoverage(3, (random) => {
      const values = normal(random, count).map((value) => 3 * value);
      return spreadInterval(standardDeviation(values)!, count - 1);
    }),
  );
});

describe('the interval of a slope', () => {
  test.each([4, 5, 7, 10, 14, 30])('over %d weeks', (count) => {
    const weeks = times(count, (i) => i);
    expectCoverage(0.3, (random) => {
      const noise = skewed(random, count);
      return theilSen(
        weeks,
        weeks.map((week) => 0.3 * week + noise[week]!),
      )!.slopeInterval;
    });
  });

  test('at 93 % over seven uneven times', () => {
    const at = [1, 2, 3, 4, 10, 12, 18];
    expectCoverage(-2, (random) => {
      const noise = normal(random, 7);
      return theilSen(
        at,
        at.map((time, i) => noise[i]! - 2 * time),
        0.93,
      )!.slopeInterval;
    });
  });
});

describe('the interval of a change of spread', () => {
  const groups = (
    sizes: readonly number[],
    draw: typeof normal,
    deviation: number,
    random: RandomSource,
  ): number[][] =>
    sizes.map((size) => {
      const day = 5 * gaussian(random); // shifts from practice to practice
      return draw(random, size).map((value) => day + deviation * value);
    });
  const MANY = times(6, () => 8);
  const FEW = [20, 9, 6];

  test.each([
    ['normal', 'many and many', normal, MANY, MANY],
    ['normal', 'few and many', normal, FEW, MANY],
    ['heavy-tailed', 'many and many', heavy, MANY, MANY],
    ['heavy-tailed', 'few and few', heavy, FEW, FEW],
  ] as const)('%s reps, %s practices', (_, __, draw, before, now) =>
    expectCoverage(0.7, (random) => {
      const change = spreadChange(groups(before, draw, 1, random), groups(now, draw, 0.7, random));
      return change.ratioInterval!;
    }),
  );
});

describe('the test of a trend', () => {
  // the share of false alarms is never more than 5 %, and few weeks cannot reach it
  test.each([
    [4, 0],
    [5, 2 / 120],
    [8, 0.03115079365079365],
    [10, 0.04662257495590829],
    [14, 0.05],
    [30, 0.05],
  ])('of %d weeks without one', (count, expected) => {
    const random = seededRandom(3);
    const alarms = times(TRIALS, () => mannKendall(normal(random, count))!).filter(
      ({ chance }) => chance <= 0.05,
    );
    expect(Math.abs(alarms.length / TRIALS - expected)).toBeLessThan(0.012);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kendallUpper } from '../../../src/consistency/trend/kendall-distribution.ts';
import { mannKendall } from '../../../src/consistency/trend/mann-kendall.ts';
import { theilSen } from '../../../src/consistency/trend/theil-sen.ts';
import { NORRIS } from '../../reference/norris.ts';
import { BY_HAND, ONE_TO_HUNDRED, RARE_S, SEN, SHAMPOO, TEN, TIED } from '../../reference/trend.ts';
import { times } from '../rep-measures.ts';

const CASES = { BY_HAND, SHAMPOO, TEN, TIED, ONE_TO_HUNDRED };
const places = (values: readonly number[]): number[] => values.map((_, i) => i);

describe.each(Object.entries(CASES))('the published series %s', (_, one) => {
  test('Mann and Kendall', () => {
    const found = mannKendall(one.values)!;
    expect(found.s).toBe(one.s);
    expect(found.variance).toBeCloseTo(one.variance, 9);
    expect(found.z).toBeCloseTo(one.z, 9);
  });

  test('Theil and Sen', () =>
    expect(theilSen(places(one.values), one.values)?.slope).toBeCloseTo(one.slope, 9));
});

describe('Mann and Kendall', () => {
  test('go by the normal distribution with ties or more than ten values', () => {
    const byHand = mannKendall(BY_HAND.values)!;
    expect(byHand.method).toBe('normal');
    expect(byHand.chance / 2).toBeCloseTo(0.0018, 4); // as printed, one side
    expect(mannKendall(TIED.values)?.method).toBe('normal');
    expect(mannKendall(TIED.values)?.chance).toBeCloseTo(0.0031477598557005807, 12);
  });

  test.each(RARE_S)('count the orders of %d values', (n, s, chance) => {
    expect(2 * kendallUpper(s, n)).toBeCloseTo(chance, 12);
    expect(2 * kendallUpper(s - 2, n)).toBeGreaterThan(0.05);
  });

  test('of four values nothing is rarer than 2 in 24', () => {
    const found = mannKendall([1, 2, 3, 4])!;
    expect(found.method).toBe('counted');
    expect(found.chance).toBeCloseTo(2 / 24, 12);
    expect(mannKendall([4, 3, 2, 1])?.chance).toBeCloseTo(2 / 24, 12);
  });

  test('of six equal values there is no trend', () => {
    const found = mannKendall(times(6, () => 3))!;
    expect(found).toMatchObject({ s: 0, variance: 0, z: 0, chance: 1 });
  });

  test('the chances of all S are 1, and agree with trying all orders of five', () => {
    expect(kendallUpper(-10, 5)).toBeCloseTo(1, 12);
    const orders = permutations([1, 2, 3, 4, 5]).map((order) => mannKendall(order)!.s);
    for (const s of [-10, -8, -2, 0, 2, 4, 8, 10])
      expect(kendallUpper(s, 5)).toBeCloseTo(orders.filter((one) => one >= s).length / 120, 12);
  });
});

describe('Theil and Sen', () => {
  // The paper says 93 %, for it counts |S| = 13 as missed but leaves those slopes in: the ends it prints are missed
  // only by |S| of 15 and more.
  test('Sen’s own example, and the level its interval has', () => {
    const found = theilSen(SEN.times, SEN.values, 0.95)!;
    expect(found.slope).toBe(SEN.slope);
    expect(found.intercept).toBe(SEN.intercept);
    expect(found.slopeInterval.low).toBeCloseTo(SEN.interval[0], 12);
    expect(found.slopeInterval.high).toBeCloseTo(SEN.interval[1], 12);
    // 3 or fewer falling pairs of seven values: 1 + 6 + 20 + 49 of 5040 orders
    expect(found.slopeInterval.level).toBeCloseTo(1 - 152 / 5040, 12);
    // one place further in, 4 or fewer: 98 more
    expect(theilSen(SEN.times, SEN.values, 0.93)!.slopeInterval).toMatchObject({
      low: 3.75,
      level: expect.closeTo(1 - 348 / 5040, 12),
    });
  });

  test('a long series with its interval', () => {
    const found = theilSen(places(SHAMPOO.values), SHAMPOO.values)!;
    expect(found.intercept).toBeCloseTo(SHAMPOO.intercept, 9);
    expect(found.slopeInterval.low).toBeCloseTo(SHAMPOO.interval[0], 9);
    expect(found.slopeInterval.high).toBeCloseTo(SHAMPOO.interval[1], 9);
    expect(found.slopeInterval.level).toBeGreaterThan(0.95);
    expect(found.slopeInterval.level).toBeLessThan(0.955);
  });

  test('with ties has the interval of the corrected normal distribution, however few values', () => {
    // SciPy 1.17 theilslopes of the same eight values
    const values = [70, 72, 72, 74, 74, 74, 78, 80];
    const at = (level: number) => theilSen(places(values), values, level)!.slopeInterval;
    expect(at(0.95)).toMatchObject({ low: 2 / 3, high: 2 });
    expect(at(0.9)).toMatchObject({ low: 0.8, high: 1.6 });
  });

  test('three values, two of them equal', () => {
    const found = theilSen([0, 1, 2], [0, 1, 1])!;
    expect([found.slope, found.intercept]).toEqual([0.5, 0.5]); // SciPy, separate medians
  });

  test('near the certified slope of Norris', () =>
    expect(theilSen(NORRIS.x, NORRIS.y)!.slope).toBeCloseTo(1.002, 3));

  test('says what few values attain, and gives nothing for fewer than three or one time', () => {
    expect(theilSen([0, 1, 2, 3], [1, 3, 2, 5])!.slopeInterval.level).toBeCloseTo(1 - 2 / 24, 12);
    expect(theilSen([0, 1], [1, 2])).toBeNull();
    expect(theilSen([1, 1, 1], [1, 2, 3])).toBeNull();
  });
});

const series = fc.uniqueArray(fc.integer({ min: -500, max: 500 }), { minLength: 8, maxLength: 30 });

test('a trend ignores a constant and turns its sign with the values', () => {
  fc.assert(
    fc.property(series, (values) => {
      const turned = values.map((x) => 7 - x);
      const [one, other] = [mannKendall(values)!, mannKendall(turned)!];
      expect(other.s + one.s).toBe(0);
      expect(other.chance).toBeCloseTo(one.chance, 12);
      const [line, turnedLine] = [values, turned].map((y) => theilSen(places(y), y)!);
      expect(turnedLine!.slope).toBeCloseTo(-line!.slope, 9);
      expect(turnedLine!.slopeInterval.low).toBeCloseTo(-line!.slopeInterval.high, 9);
    }),
  );
});

test('the slope of a line survives one wild value', () => {
  const any = fc.integer({ min: -1e6, max: 1e6 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 9 }), any, (place, wild) => {
      const line = times(10, (i) => (i === place ? wild : 2 * i));
      expect(theilSen(places(line), line)!.slope).toBeCloseTo(2, 9);
    }),
  );
});

function permutations(values: readonly number[]): number[][] {
  if (values.length <= 1) return [[...values]];
  return values.flatMap((first, i) =>
    permutations(values.filter((_, j) => j !== i)).map((rest) => [first, ...rest]),
  );
}

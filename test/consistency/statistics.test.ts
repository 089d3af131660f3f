import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mean } from '../../src/consistency/mean.ts';
import { median } from '../../src/consistency/median.ts';
import { standardDeviation } from '../../src/consistency/standard-deviation.ts';

const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2 });

describe('the median', () => {
  test.each([
    [[3], 3],
    [[2, 1], 1.5],
    [[9, 1, 5], 5],
    [[10, 9, 100, 1], 9.5], // by number, not by text
    [[-1, -3, -2], -2],
  ])('of %j is %d', (all, expected) => expect(median(all)).toBe(expected));

  test('of nothing is null', () => expect(median([])).toBeNull());

  test('has as many values above as below, in any order, and changes nothing', () => {
    fc.assert(
      fc.property(values, (all) => {
        const before = [...all];
        const middle = median(all)!;
        expect(all).toEqual(before);
        expect(median([...all].reverse())).toBe(middle);
        const [below, above] = [all.filter((x) => x < middle), all.filter((x) => x > middle)];
        expect(Math.max(below.length, above.length)).toBeLessThanOrEqual(all.length / 2);
      }),
    );
  });
});

describe('the standard deviation', () => {
  test.each([[[]], [[1]]])('of %j is null', (all) => expect(standardDeviation(all)).toBeNull());
  test('of one value twice is 0', () => expect(standardDeviation([0.1, 0.1])).toBe(0));

  test('grows with a factor and ignores a shift', () => {
    fc.assert(
      fc.property(values, (all) => {
        const deviation = standardDeviation(all)!;
        expect(standardDeviation(all.map((x) => 8 * x))).toBeCloseTo(8 * deviation, 5);
        expect(standardDeviation(all.map((x) => x + 1024))).toBeCloseTo(deviation, 5);
      }),
    );
  });
});

test('the mean of nothing is null', () => expect(mean([])).toBeNull());

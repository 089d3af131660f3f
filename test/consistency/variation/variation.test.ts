import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { repeatability } from '../../../src/consistency/variation/repeatability.ts';
import {
  typicalError,
  typicalErrorInterval,
} from '../../../src/consistency/variation/typical-error.ts';

describe('repeatability', () => {
  const GROUPS = [
    [5.1, 4.7, 5.6, 5.0],
    [4.2, 4.9, 4.4],
    [6.0, 5.5, 5.8, 5.2, 5.9],
  ];

  test('of three unequal groups, by the formulas of ISO 5725-2 in another program (SciPy)', () => {
    const found = repeatability(GROUPS)!;
    expect(found.meanSize).toBeCloseTo(3.9166666666666665, 12);
    expect(found.within).toBeCloseTo(0.3508719297850871, 12);
    expect(found.between).toBeCloseTo(0.5552393899408105, 12);
    expect(found.reproducibility).toBeCloseTo(0.6568119146703677, 12);
    expect(found.repeatabilityLimit).toBeCloseTo(0.9824414033982437, 12);
    expect(found.reproducibilityLimit).toBeCloseTo(1.8390733610770293, 12);
    expect([found.groups, found.values]).toEqual([3, 12]);
  });

  test('shows nothing between groups that are alike', () => {
    const found = repeatability([
      [1, 2, 3],
      [1, 2, 3],
    ])!;
    expect(found.between).toBe(0);
    expect(found.within).toBe(1);
  });

  test('needs two groups, and one with two values', () => {
    expect(repeatability([])).toBeNull();
    expect(repeatability([[1, 2, 3]])).toBeNull();
    expect(repeatability([[1], [2], [3]])).toBeNull();
    expect(repeatability([[1], [], [2, 4]])).toMatchObject({ groups: 2, values: 3 });
  });

  test('a shift of one group changes what lies between them, not what lies within', () => {
    const group = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(fc.array(group, { minLength: 2, maxLength: 6 }), (groups) => {
        const shifted = groups.map((values, i) => (i === 0 ? values.map((x) => x + 1000) : values));
        const [before, after] = [repeatability(groups)!, repeatability(shifted)!];
        expect(after.within).toBeCloseTo(before.within, 9);
        expect(after.between).toBeGreaterThan(before.between);
      }),
    );
  });
});

describe('the typical error', () => {
  test('by hand', () => {
    // differences 2 and -2: deviation sqrt(8), over sqrt(2)
    expect(typicalError([1, 3, 1])).toBeCloseTo(2, 12);
    expect(typicalError([1, 3])).toBeNull();
  });

  test('does not see a steady trend', () => expect(typicalError([1, 2, 3, 4, 5])).toBe(0));

  // Two differences: 1 degree of freedom, 2 less by the root of 2/3, quantiles of chi-square by SciPy. Of five values
  // 45/17 degrees, the moments of the quadratic form taken from its matrix by NumPy.
  test('lies within an interval', () => {
    const three = typicalErrorInterval([1, 3, 1])!;
    expect(three.low).toBeCloseTo(0.7285585681429, 10);
    expect(three.high).toBeCloseTo(52.10907201168643, 8);
    expect(three.level).toBe(0.95);
    expect(typicalError([1, 3, 2, 5, 3])).toBeCloseTo(1.6832508230603462, 12);
    const five = typicalErrorInterval([1, 3, 2, 5, 3], 0.9)!;
    expect(five.low).toBeCloseTo(0.913296588673366, 10);
    expect(five.high).toBeCloseTo(4.907678116858037, 9);
    expect(typicalErrorInterval([1, 3])).toBeNull();
  });
});

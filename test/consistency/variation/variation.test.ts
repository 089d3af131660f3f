import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intraclassCorrelation } from '../../../src/consistency/variation/intraclass-correlation.ts';
import { repeatability } from '../../../src/consistency/variation/repeatability.ts';
import { typicalError } from '../../../src/consistency/variation/typical-error.ts';

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

describe('intraclass correlation', () => {
  // Shrout and Fleiss (1979), Psychological Bulletin 86:420, tables 2 and 4; further digits by SciPy
  const RATINGS = [
    [9, 2, 5, 8],
    [6, 1, 3, 2],
    [8, 4, 6, 8],
    [7, 1, 2, 6],
    [10, 5, 6, 9],
    [6, 2, 4, 7],
  ];

  test('of six targets by four judges', () => {
    const found = intraclassCorrelation(RATINGS)!;
    const rounded = Object.values(found).map((value) => Math.round(100 * value) / 100);
    expect(rounded).toEqual([0.17, 0.29, 0.71, 0.44, 0.62, 0.91]);
    expect(found.oneWay).toBeCloseTo(0.16574176840547544, 12);
    expect(found.agreement).toBeCloseTo(0.2897637795275591, 12);
    expect(found.consistency).toBeCloseTo(0.7148407148407149, 12);
    expect(found.oneWayMean).toBeCloseTo(0.44279713367926865, 12);
    expect(found.agreementMean).toBeCloseTo(0.6200505475989891, 12);
    expect(found.consistencyMean).toBeCloseTo(0.9093155423770695, 12);
  });

  test.each([
    [[]],
    [[[1, 2]]],
    [[[1], [2]]],
    [[[1, 2], [3]]],
    [
      [
        [4, 4],
        [4, 4],
      ],
    ],
  ])('of %j is null', (rows) => expect(intraclassCorrelation(rows)).toBeNull());
});

describe('the typical error', () => {
  test('by hand', () => {
    // differences 2 and -2: deviation sqrt(8), over sqrt(2)
    expect(typicalError([1, 3, 1])).toBeCloseTo(2, 12);
    expect(typicalError([1, 3])).toBeNull();
  });

  test('does not see a steady trend', () => expect(typicalError([1, 2, 3, 4, 5])).toBe(0));
});

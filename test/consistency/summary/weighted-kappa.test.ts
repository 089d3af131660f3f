import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { weightedKappa } from '../../../src/consistency/summary/weighted-kappa.ts';

/** Cohen, Psychological Bulletin 70:213 (1968): proportions of 200 judgements by two judges, and his weights. */
const COHEN = [
  [88, 14, 18],
  [10, 40, 10],
  [2, 6, 12],
];
const WEIGHTS = [
  [0, 1, 3],
  [1, 0, 6],
  [3, 6, 0],
];

describe("Cohen's example", () => {
  const weighted = weightedKappa(COHEN, (i, j) => WEIGHTS[i]![j]!)!;
  const plain = weightedKappa(COHEN, (i, j) => (i === j ? 0 : 1))!;

  test('has 0.348 with his weights and 0.492 without', () => {
    expect(weighted.kappa).toBeCloseTo(0.348, 3);
    expect(plain.kappa).toBeCloseTo(0.492, 3);
  });

  test('has the standard errors of a numerical delta method in Python; 40,000 drawn tables agree within 1 %', () => {
    const error = ({ interval }: typeof weighted) =>
      (interval.high - interval.low) / 2 / 1.959963984540054;
    expect(error(weighted)).toBeCloseTo(0.07550401525606175, 8);
    expect(error(plain)).toBeCloseTo(0.05100181557415418, 8);
    expect(error(weightedKappa(COHEN)!)).toBeCloseTo(0.05443230917677104, 8);
    expect(weightedKappa(COHEN)!.kappa).toBeCloseTo(0.4736842105263158, 12);
  });
});

test('full agreement is 1, none beyond chance 0, always the same word says nothing', () => {
  expect(
    weightedKappa([
      [3, 0],
      [0, 5],
    ])?.kappa,
  ).toBe(1);
  expect(
    weightedKappa([
      [2, 4],
      [1, 2],
    ])?.kappa,
  ).toBeCloseTo(0, 12);
  expect(
    weightedKappa([
      [7, 0],
      [0, 0],
    ]),
  ).toBeNull();
  expect(
    weightedKappa([
      [0, 0],
      [0, 0],
    ]),
  ).toBeNull();
});

test('is the same with the judges exchanged, and for any number of the same judgements', () => {
  const cells = fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 9, maxLength: 9 });
  fc.assert(
    fc.property(cells, (cell) => {
      const table = [cell.slice(0, 3), cell.slice(3, 6), cell.slice(6)];
      const kappa = weightedKappa(table)!.kappa;
      const turned = table.map((_, j) => table.map((row) => row[j]!));
      expect(weightedKappa(turned)!.kappa).toBeCloseTo(kappa, 12);
      const more = weightedKappa(table.map((row) => row.map((count) => 4 * count)))!;
      expect(more.kappa).toBeCloseTo(kappa, 12);
      // four times as many judgements halve the interval
      const width = ({ low, high }: { low: number; high: number }) => high - low;
      expect(width(more.interval)).toBeCloseTo(width(weightedKappa(table)!.interval) / 2, 10);
    }),
  );
});

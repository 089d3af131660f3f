import { describe, expect, test } from 'vitest';
import { inverseDiagonal, solveLeastSquares } from '../../../src/consistency/fit/qr.ts';
import { expectRelative } from '../../close-to.ts';
import { NORRIS } from '../../reference/norris.ts';
import { times } from '../rep-measures.ts';

const ones = (values: readonly number[]): number[] => values.map(() => 1);

/** A regression: what is solved for, with what the reference datasets certify beside it. */
function linearFit(columns: readonly (readonly number[])[], values: readonly number[]) {
  const solved = solveLeastSquares(
    columns.map((column) => Float64Array.from(column)),
    values,
  );
  if (solved === null) return null;
  const coefficients = Array.from(solved.solution);
  const residualSquares = values.reduce((sum, value, i) => {
    const fitted = coefficients.reduce((total, c, j) => total + c * columns[j]![i]!, 0);
    return sum + (value - fitted) ** 2;
  }, 0);
  const residualDeviation = Math.sqrt(residualSquares / (values.length - columns.length));
  const standardErrors = Array.from(
    inverseDiagonal(solved.triangle),
    (unit) => Math.sqrt(unit) * residualDeviation,
  );
  return { coefficients, standardErrors, residualSquares, residualDeviation };
}

describe('the NIST reference datasets of linear regression', () => {
  // certified values: NIST/SEMATECH Statistical Reference Datasets, https://www.itl.nist.gov/div898/strd/lls/lls.shtml
  test('Norris', () => {
    const found = linearFit([ones(NORRIS.x), NORRIS.x], NORRIS.y)!;
    expectRelative(found.coefficients[0]!, NORRIS.certified.intercept, 1e-10);
    expectRelative(found.coefficients[1]!, NORRIS.certified.slope, 1e-10);
    expectRelative(found.standardErrors[0]!, 0.232818234301152, 1e-10);
    expectRelative(found.standardErrors[1]!, 0.000429796848199937, 1e-10);
    expectRelative(found.residualSquares, 26.6173985294224, 1e-10);
    expectRelative(found.residualDeviation!, NORRIS.certified.residualStandardDeviation, 1e-10);
  });

  test('NoInt1, through the origin', () => {
    const x = times(11, (i) => 60 + i);
    const y = times(11, (i) => 130 + i);
    const found = linearFit([x], y)!;
    expectRelative(found.coefficients[0]!, 2.07438016528926, 1e-10);
    expectRelative(found.standardErrors[0]!, 0.0165289256198347, 1e-10);
    expectRelative(found.residualSquares, 127.272727272727, 1e-10);
  });

  test('NoInt2, through the origin', () => {
    const found = linearFit([[4, 5, 6]], [3, 4, 4])!;
    expectRelative(found.coefficients[0]!, 0.727272727272727, 1e-10);
    expectRelative(found.standardErrors[0]!, 0.0420827318078432, 1e-10);
    expectRelative(found.residualSquares, 0.272727272727273, 1e-10);
  });
});

describe('columns that are nearly alike', () => {
  // Wampler1: y = 1 + x + ... + x^5 at 0..20, all coefficients certified as 1. The normal equations keep three digits.
  test('Wampler1', () => {
    const x = times(21, (i) => i);
    const columns = times(6, (power) => x.map((value) => value ** power));
    const y = x.map((_, i) => columns.reduce((sum, column) => sum + column[i]!, 0));
    for (const coefficient of linearFit(columns, y)!.coefficients)
      expectRelative(coefficient, 1, 1e-7);
  });

  test('alike columns and too few values give nothing', () => {
    expect(
      linearFit(
        [
          [1, 1, 1],
          [2, 2, 2],
        ],
        [1, 2, 3],
      ),
    ).toBeNull();
    expect(linearFit([[1], [2]], [3])).toBeNull();
    expect(linearFit([[0, 0]], [1, 2])).toBeNull();
    expect(linearFit([[2]], [3])).toMatchObject({ coefficients: [1.5] });
  });
});

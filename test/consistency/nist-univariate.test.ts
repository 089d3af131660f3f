import { describe, expect, test } from 'vitest';
import { mean } from '../../src/consistency/mean.ts';
import { standardDeviation } from '../../src/consistency/standard-deviation.ts';
import { lagAutocorrelation } from '../../src/consistency/summary/lag-autocorrelation.ts';
import reference from '../reference/nist-univariate.json' with { type: 'json' };

/**
 * Relative tolerances. The values of NumAcc3 and NumAcc4 lose their last digits when they are read as doubles, so that
 * even an exact computation misses the certified deviation by 1e-9 and 6e-9.
 */
const MEAN = 1e-14;
/** The same loss of digits; 1e-10 is also what the GNU Scientific Library asks of itself here. */
const AUTOCORRELATION: Readonly<Record<string, number>> = { NumAcc4: 1e-10 };
const DEVIATION: Readonly<Record<string, number>> = { NumAcc3: 2e-9, NumAcc4: 1e-8 };

describe.each(reference.sets)('$name of the NIST reference datasets', (set) => {
  test('mean', () => {
    const found = mean(set.values);
    expect(Math.abs(found! - set.mean)).toBeLessThanOrEqual(MEAN * Math.abs(set.mean));
  });

  test('standard deviation', () => {
    const tolerance = (DEVIATION[set.name] ?? 1e-12) * set.standardDeviation;
    const found = standardDeviation(set.values);
    expect(Math.abs(found! - set.standardDeviation)).toBeLessThanOrEqual(tolerance);
  });

  test('autocorrelation of neighbours', () => {
    const tolerance = (AUTOCORRELATION[set.name] ?? 1e-12) * Math.abs(set.lagAutocorrelation);
    const found = lagAutocorrelation(set.values);
    expect(Math.abs(found! - set.lagAutocorrelation)).toBeLessThanOrEqual(tolerance);
  });
});

test('all eight sets are there', () => {
  expect(reference.sets.map(({ values }) => values.length)).toEqual([
    200, 218, 50, 100, 3, 1001, 1001, 1001,
  ]);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chartSignals } from '../../../src/consistency/chart/chart-signals.ts';
import { cusum } from '../../../src/consistency/chart/cusum.ts';
import { ewma } from '../../../src/consistency/chart/ewma.ts';
import {
  deviationOf,
  individualsLimits,
  movingRanges,
} from '../../../src/consistency/chart/individuals-chart.ts';
import { gaussian, seededRandom } from '../../../src/drill/seeded-random.ts';
import { INDIVIDUALS, SUMS, WEIGHTED } from '../../reference/control-charts.ts';
import { times } from '../rep-measures.ts';

const withinHalfStep = (
  found: readonly number[],
  printed: readonly number[],
  step: number,
): void => {
  expect(found).toHaveLength(printed.length);
  for (const [i, value] of found.entries())
    expect(Math.abs(value - printed[i]!), `${i}`).toBeLessThanOrEqual(step / 2 + 1e-9);
};

describe('the individuals chart', () => {
  test('has the limits of the handbook', () => {
    const found = individualsLimits(INDIVIDUALS.values)!;
    withinHalfStep(
      [found.centre, found.meanMovingRange, found.upper, found.lower],
      [INDIVIDUALS.mean, INDIVIDUALS.meanMovingRange, INDIVIDUALS.upper, INDIVIDUALS.lower],
      1e-4,
    );
    expect(found.movingRangeUpper).toBeCloseTo(3.267 * found.meanMovingRange, 12);
    expect(movingRanges(INDIVIDUALS.values)).toHaveLength(9);
    expect(deviationOf(found)).toBeCloseTo((INDIVIDUALS.upper - INDIVIDUALS.mean) / 3, 4);
  });

  test('has no limits without neighbours', () => {
    expect(individualsLimits([])).toBeNull();
    expect(individualsLimits([1])).toBeNull();
  });

  test('calls out what is outside, and the eighth in a row on one side', () => {
    const limits = individualsLimits([9, 11, 9, 11, 9, 11])!; // 10, limits 10 +- 5.3
    expect(chartSignals([10, 15.4, 4.6, 15.3, 4.7], limits)).toEqual([
      null,
      'above limits',
      'below limits',
      null,
      null,
    ]);
    const low = times(9, () => 9.5);
    expect(chartSignals(low, limits).map((one) => one !== null)).toEqual(times(9, (i) => i >= 7));
    expect(chartSignals([...times(7, () => 10.5), 9.5, 10.5], limits)).toEqual(
      times(9, () => null),
    );
    expect(chartSignals([...times(7, () => 10.5), 10, 10.5], limits).at(-1)).toBeNull();
    expect(
      chartSignals(
        times(8, () => 10.5),
        limits,
      ).at(-1),
    ).toBe('eight above');
  });

  test('permuting values changes the limits, not their centre', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 2 }), (values) => {
        const sorted = [...values].sort((a, b) => a - b);
        const [one, other] = [individualsLimits(values)!, individualsLimits(sorted)!];
        expect(one.centre).toBeCloseTo(other.centre, 9);
        expect(other.meanMovingRange).toBeLessThanOrEqual(one.meanMovingRange + 1e-9);
      }),
    );
  });
});

describe('weighted means', () => {
  const points = ewma(WEIGHTED.values, WEIGHTED);

  test('are those of the handbook', () =>
    withinHalfStep(
      points.map(({ value }) => value),
      WEIGHTED.means,
      0.01,
    ));

  test('have limits that widen to those of the handbook', () => {
    withinHalfStep(
      points.slice(0, 5).map(({ upper }) => upper),
      WEIGHTED.firstUpper,
      1e-4,
    );
    const last = points.at(-1)!;
    withinHalfStep([last.upper, last.lower], [WEIGHTED.upper, WEIGHTED.lower], 1e-3);
  });
});

describe('cumulative sums', () => {
  const points = cusum(SUMS.values, SUMS);

  test('are those of the handbook', () => {
    withinHalfStep(
      points.map(({ high }) => high),
      SUMS.high,
      1e-6,
    );
    withinHalfStep(
      points.map(({ low }) => low),
      SUMS.low,
      1e-6,
    );
    expect(points.findIndex(({ signal }) => signal !== null) + 1).toBe(SUMS.firstSignal);
  });

  test('call out a fall as well', () => {
    const { slack, limit, centre } = SUMS;
    const mirrored = SUMS.values.map((value) => 2 * centre - value);
    const other = cusum(mirrored, { centre, slack, limit });
    expect(other[SUMS.firstSignal - 1]?.signal).toBe('low');
    expect(other.map(({ low }) => low.toFixed(6))).toEqual(
      points.map(({ high }) => high.toFixed(6)),
    );
  });

  test('call out by chance as often as the theory of Markov chains says: once in 168 values', () => {
    const random = seededRandom(20261125);
    const runs = times(2000, () => {
      const noise = times(3000, () => gaussian(random));
      return cusum(noise, { centre: 0, slack: 0.5, limit: 4 }).findIndex((p) => p.signal) + 1;
    });
    const meanRun = runs.reduce((sum, run) => sum + run, 0) / runs.length;
    // 167.7 (Brook and Evans 1972, Biometrika 59:539); four standard errors of 2000 nearly geometric runs
    expect(Math.abs(meanRun - 167.7)).toBeLessThan((4 * 167.7) / Math.sqrt(2000));
  });
});

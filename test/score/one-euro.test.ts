import { describe, expect, test } from 'vitest';
import { type OneEuroState, type OneEuroTuning, oneEuro } from '../../src/score/one-euro.ts';
import golden from '../reference/score-signal.json' with { type: 'json' };

function run(
  values: readonly number[],
  times: readonly number[],
  tuning: OneEuroTuning,
  rateHz: number,
): number[] {
  let state: OneEuroState | null = null;
  return values.map((value, i) => {
    state = oneEuro(state, value, times[i]!, tuning, rateHz);
    return state.value;
  });
}

describe('oneEuro', () => {
  test.each(golden.oneEuro.cases)('$freq Hz, $mincutoff, $beta', (row) => {
    const values = row.x ?? golden.oneEuro.x;
    const times = row.t ?? values.map((_, i) => i / 1000);
    const tuning = { minCutoffHz: row.mincutoff, beta: row.beta, speedCutoffHz: row.dcutoff };
    const filtered = run(values, times, tuning, row.freq);
    row.y.forEach((value, i) => {
      expect(Math.abs(filtered[i]! - value)).toBeLessThan(1e-8);
    });
  });

  test("agrees with the authors' ground truth", () => {
    const { t, x, y } = golden.oneEuroAuthors;
    const filtered = run(x, t, { minCutoffHz: 1, beta: 0.1, speedCutoffHz: 1 }, 120);
    y.forEach((value, i) => {
      expect(Math.abs(filtered[i]! - value)).toBeLessThan(1e-4);
    });
  });

  test('on the screen lags a release of 80 % per second by about 4 ms', () => {
    let state: OneEuroState | null = null;
    for (let i = 0; i <= 1000; i++) state = oneEuro(state, 0.8 - 0.8 * (i / 1000), i / 1000);
    expect(state!.value / 0.8).toBeCloseTo(0.004, 3);
  });
});

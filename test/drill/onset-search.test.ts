import { describe, expect, test } from 'vitest';
import {
  onsetRule,
  searchOnset,
  startOnsetSearch,
  targetOnsetS,
} from '../../src/drill/onset-search.ts';
import type { Track } from '../../src/trace/track.ts';
import { RAMP } from './drill-rig.ts';

const track = (levels: readonly number[], fromS = 0): Track => ({
  timeS: Float64Array.from(levels, (_, i) => fromS + i / 1000),
  value: Float64Array.from(levels),
});

const QUIET = onsetRule(new Float64Array(300));

function onset(levels: readonly number[]) {
  const { foundAtS, search } = searchOnset(startOnsetSearch(QUIET, 0, 0), track(levels), 0, 10);
  return foundAtS === null ? null : { certainS: foundAtS, onsetS: search.aboveLowS };
}

describe('thresholds', () => {
  test('are 3 % and 1.5 % above a quiet baseline', () => {
    const resting = onsetRule(new Float64Array(300).fill(0.02));
    expect(resting.highLevel).toBeCloseTo(0.05, 12);
    expect(resting.lowLevel).toBeCloseTo(0.035, 12);
  });

  test('are six standard deviations above a noisy one', () => {
    // half at -0.01, half at +0.01: median 0, median absolute deviation 0.01, times 1.4826
    const noisy = onsetRule(Float64Array.from({ length: 300 }, (_, i) => (i % 2 ? 0.01 : -0.01)));
    expect(noisy.highLevel).toBeCloseTo(6 * 0.014826, 12);
    expect(noisy.lowLevel).toBeCloseTo(3 * 0.014826, 12);
  });

  test('do not move for a few wild samples', () => {
    const spiked = new Float64Array(300);
    spiked.fill(0.9, 0, 40);
    expect(onsetRule(spiked)).toEqual(QUIET);
  });
});

describe('the onset', () => {
  const rise = Array.from({ length: 400 }, (_, i) => Math.max(0, (i - 100) / 1000));

  test('is walked back to the low threshold and certain 20 ms after the high one', () => {
    // 1 per second from 0.1 s: above 1.5 % from 0.116 s, above 3 % from 0.131 s
    expect(onset(rise)?.onsetS).toBeCloseTo(0.116, 9);
    expect(onset(rise)?.certainS).toBeCloseTo(0.151, 9);
  });

  test('is not a knock that falls below the low threshold within 20 ms', () => {
    expect(onset([...Array(50).fill(0), ...Array(18).fill(0.2), ...Array(300).fill(0)])).toBeNull();
  });

  test('may dip below the high threshold', () => {
    const dip = [...Array(50).fill(0), 0.04, ...Array(300).fill(0.02)];
    expect(onset(dip)?.onsetS).toBeCloseTo(0.05, 9);
  });

  test('is found without a further sample where the device reports on change', () => {
    const { foundAtS, search } = searchOnset(
      startOnsetSearch(QUIET, 0, 0),
      { timeS: Float64Array.of(0.5), value: Float64Array.of(0.4) },
      0,
      0.53,
    );
    expect(foundAtS).toBeCloseTo(0.52, 12);
    expect(search.aboveLowS).toBe(0.5);
  });

  test('of a target is where its rise passes 1.5 %', () => {
    // 8 per second from 0: 0.001875 s
    expect(targetOnsetS(RAMP)).toBeCloseTo(0.001875, 3);
  });
});

import { describe, expect, test } from 'vitest';
import { brakingThreshold, findOnset } from '../../src/score/onset.ts';

/** 300 ms of rest, then a ramp of 1 % per ms. */
const ramp = (rest: (i: number) => number): Float64Array =>
  Float64Array.from({ length: 500 }, (_, i) => rest(i) + Math.max(0, i - 300) / 100);

const onsetOf = (signal: Float64Array, stepLevel = 0): number | null =>
  findOnset(signal, brakingThreshold(signal, stepLevel));

describe('findOnset', () => {
  test('walks back from 3 % to 1.5 %', () => {
    expect(onsetOf(ramp(() => 0))).toBe(302);
  });

  test('counts from the resting foot', () => {
    expect(onsetOf(ramp(() => 0.04))).toBe(302);
  });

  test('keeps six deviations away from a noisy rest', () => {
    // Alternating by 1 % either way: median 0, deviation 1.4826 %, so the thresholds are 8.9 % and 4.4 %.
    const noisy = ramp((i) => (i < 300 ? (i % 2 === 0 ? 0.01 : -0.01) : 0));
    const { onLevel, offLevel } = brakingThreshold(noisy, 0);
    expect(onLevel - offLevel).toBeCloseTo((6 * 0.014826) / 2, 9);
    expect(onsetOf(noisy)).toBe(305);
  });

  test('keeps six steps away from a coarse sensor', () => {
    const { onLevel, offLevel, restingLevel } = brakingThreshold(new Float64Array(300), 0.02);
    expect({ onLevel, offLevel, restingLevel }).toEqual({
      onLevel: 0.12,
      offLevel: 0.06,
      restingLevel: 0,
    });
  });

  test('passes over a spike shorter than 20 ms', () => {
    const spiked = ramp((i) => (i >= 200 && i < 215 ? 0.2 : 0));
    expect(onsetOf(spiked)).toBe(302);
    expect(onsetOf(ramp((i) => (i >= 200 && i < 225 ? 0.2 : 0)))).toBe(200);
  });

  test('is absent where nothing rises', () => {
    expect(onsetOf(new Float64Array(500).fill(0.3))).toBeNull();
    expect(onsetOf(new Float64Array(0))).toBeNull();
  });

  test('does not take a rise at the very start for the rest', () => {
    const late = ramp(() => 0).subarray(295);
    expect(onsetOf(late)).toBe(7);
  });

  test('looks from where it is told', () => {
    const twice = ramp((i) => (i < 250 && i >= 100 ? 0.2 : 0));
    const threshold = brakingThreshold(
      ramp(() => 0),
      0,
    );
    expect(findOnset(twice, threshold)).toBe(100);
    expect(findOnset(twice, threshold, 260)).toBe(302);
  });
});

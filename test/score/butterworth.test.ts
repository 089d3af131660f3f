import { describe, expect, test } from 'vitest';
import { butterworth } from '../../src/score/butterworth.ts';
import golden from '../reference/score-signal.json' with { type: 'json' };

describe('butterworth', () => {
  test.each(golden.butter)('one pass at $wn of half the rate', ({ wn, a, b }) => {
    const { a: poles, b: zeros } = butterworth(wn * 500, 1000, 1);
    for (const [i, value] of b.entries()) expect(Math.abs(zeros[i]! - value)).toBeLessThan(1e-12);
    for (const [i, value] of a.slice(1).entries()) {
      expect(Math.abs(poles[i]! - value)).toBeLessThan(1e-12);
    }
  });

  test.each(golden.butterDual)('two passes at $fc Hz', ({ fc, fs, a, b }) => {
    const { a: poles, b: zeros } = butterworth(fc, fs, 2);
    for (const [i, value] of b.entries()) expect(Math.abs(zeros[i]! - value)).toBeLessThan(1e-12);
    for (const [i, value] of a.slice(1).entries()) {
      expect(Math.abs(poles[i]! - value)).toBeLessThan(1e-12);
    }
  });

  test('two passes together are 3 dB down at the cutoff', () => {
    expect(powerGain(butterworth(12, 1000, 2), 12 / 1000)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(powerGain(butterworth(12, 1000, 1), 12 / 1000)).toBeCloseTo(0.5, 12);
  });
});

/** |H|^2 of one pass, straight from the transfer function on the unit circle. */
function powerGain({ a, b }: ReturnType<typeof butterworth>, cyclesPerSample: number): number {
  const w = 2 * Math.PI * cyclesPerSample;
  const square = (c0: number, c1: number, c2: number): number =>
    (c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w)) ** 2 +
    (c1 * Math.sin(w) + c2 * Math.sin(2 * w)) ** 2;
  return square(...b) / square(1, ...a);
}

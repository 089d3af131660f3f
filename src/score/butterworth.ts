/** A second-order section, normalised so that the first feedback coefficient is 1. */
export interface Biquad {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number];
}

/**
 * Second-order low-pass Butterworth by the bilinear transform. The signal goes through it `passes` times; with two
 * (forward and back) the attenuation doubles, so the cutoff of one pass is moved up until both together are 3 dB down
 * at `cutoffHz`. The correction belongs to the pre-warped frequency (the tangent), not to the frequency itself
 * (Winter, Biomechanics and Motor Control of Human Movement, 4th ed., section 3.4).
 */
export function butterworth(cutoffHz: number, rateHz: number, passes: 1 | 2): Biquad {
  const correction = (2 ** (1 / passes) - 1) ** (1 / 4);
  const w = Math.tan((Math.PI * cutoffHz) / rateHz) / correction;
  const scale = 1 + Math.SQRT2 * w + w * w;
  const gain = (w * w) / scale;
  return {
    b: [gain, 2 * gain, gain],
    a: [(2 * (w * w - 1)) / scale, (1 - Math.SQRT2 * w + w * w) / scale],
  };
}

import type { Biquad } from './butterworth.ts';

/**
 * Filters forward and back, so that nothing is delayed. Both ends are continued by `pad` samples mirrored through the
 * end point, and each pass starts in the steady state of its first sample; a constant therefore stays a constant.
 * A signal no longer than the padding cannot be continued and comes back unfiltered.
 */
export function zeroPhase(biquad: Biquad, signal: Float64Array, pad: number): Float64Array {
  const n = signal.length;
  if (n <= pad) return signal.slice();
  const padded = new Float64Array(n + 2 * pad);
  padded.set(signal, pad);
  for (let i = 1; i <= pad; i++) {
    padded[pad - i] = 2 * signal[0]! - signal[i]!;
    padded[pad + n - 1 + i] = 2 * signal[n - 1]! - signal[n - 1 - i]!;
  }
  pass(biquad, padded);
  padded.reverse();
  pass(biquad, padded);
  padded.reverse();
  return padded.slice(pad, pad + n);
}

/** One pass in place, transposed direct form II. */
function pass({ b, a }: Biquad, x: Float64Array): void {
  const first = x[0]!;
  let z1 = (1 - b[0]) * first;
  let z2 = (b[2] - a[1]) * first;
  for (let i = 0; i < x.length; i++) {
    const input = x[i]!;
    const output = b[0] * input + z1;
    z1 = b[1] * input - a[0] * output + z2;
    z2 = b[2] * input - a[1] * output;
    x[i] = output;
  }
}

import { columnOf } from '../trace/column-of.ts';

/**
 * Amplitudes of a zero-padded discrete Fourier transform, bins 0 to size / 2, by the radix-2 algorithm (Cooley and
 * Tukey, Mathematics of Computation 19, 1965).
 *
 * @param size a power of two, at least the signal's length.
 */
export function amplitudeSpectrum(signal: Float64Array, size: number): Float64Array {
  const real = bitReversed(signal, size);
  const imaginary = new Float64Array(size);
  for (let half = 1; half < size; half *= 2) combine(real, imaginary, half);
  return columnOf(size / 2 + 1, (bin) => Math.hypot(real[bin]!, imaginary[bin]!));
}

function bitReversed(signal: Float64Array, size: number): Float64Array {
  const out = new Float64Array(size);
  let reversed = 0;
  for (let i = 0; i < size; i++) {
    if (i < signal.length) out[reversed] = signal[i]!;
    let bit = size >> 1;
    while (bit > 0 && (reversed & bit) !== 0) {
      reversed ^= bit;
      bit >>= 1;
    }
    reversed |= bit;
  }
  return out;
}

/** One stage: pairs of transforms of `half` points become transforms of twice as many. */
function combine(real: Float64Array, imaginary: Float64Array, half: number): void {
  for (let k = 0; k < half; k++) {
    const cos = Math.cos((Math.PI * k) / half);
    const sin = -Math.sin((Math.PI * k) / half);
    for (let upper = k; upper < real.length; upper += 2 * half) {
      const lower = upper + half;
      const r = real[lower]! * cos - imaginary[lower]! * sin;
      const i = real[lower]! * sin + imaginary[lower]! * cos;
      real[lower] = real[upper]! - r;
      imaginary[lower] = imaginary[upper]! - i;
      real[upper] = real[upper]! + r;
      imaginary[upper] = imaginary[upper]! + i;
    }
  }
}

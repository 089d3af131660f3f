import { columnOf } from '../trace/column-of.ts';

interface AmplitudeSpectrum {
  /** Amplitudes of the lowest bins, from 0 on. */
  readonly lowest: Float64Array;
  /** The largest amplitude in bins 0 to size / 2. */
  readonly largest: number;
}

/**
 * Amplitudes of a zero-padded discrete Fourier transform by the radix-2 algorithm (Cooley and Tukey, Mathematics of
 * Computation 19, 1965).
 *
 * @param size a power of two, at least the signal's length.
 * @param bins how many amplitudes are wanted, up to size / 2 + 1.
 */
export function amplitudeSpectrum(
  signal: Float64Array,
  size: number,
  bins: number,
): AmplitudeSpectrum {
  const first = size / 2 ** Math.ceil(Math.log2(Math.max(1, signal.length)));
  const real = bitReversed(signal, size, first);
  const imaginary = new Float64Array(size);
  for (let half = first; half < size; half *= 2) combine(real, imaginary, half);
  const amplitude = (bin: number): number => Math.hypot(real[bin]!, imaginary[bin]!);
  return { lowest: columnOf(bins, amplitude), largest: amplitude(strongest(real, imaginary)) };
}

/** The bin of the largest amplitude, by its square: roots cost more than the transform. */
function strongest(real: Float64Array, imaginary: Float64Array): number {
  let [found, most] = [0, 0];
  for (let bin = 0; bin <= real.length / 2; bin++) {
    const square = real[bin]! * real[bin]! + imaginary[bin]! * imaginary[bin]!;
    if (square > most) [found, most] = [bin, square];
  }
  return found;
}

/** Transforms of the length that the signal has without its zeros are one value each: those stages only copy it. */
function bitReversed(signal: Float64Array, size: number, first: number): Float64Array {
  const out = new Float64Array(size);
  let reversed = 0;
  for (let i = 0; i < signal.length; i++) {
    out.fill(signal[i]!, reversed, reversed + first);
    let bit = size >> 1;
    while (bit > 0 && (reversed & bit) !== 0) {
      reversed ^= bit;
      bit >>= 1;
    }
    reversed |= bit;
  }
  return out;
}

/** Cosines and sines of the half turn in so many steps. */
interface Turn {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

const turns = new Map<number, Turn>();

function turnIn(steps: number): Turn {
  const known = turns.get(steps);
  if (known !== undefined) return known;
  const turn = {
    cos: columnOf(steps, (k) => Math.cos((Math.PI * k) / steps)),
    sin: columnOf(steps, (k) => Math.sin((Math.PI * k) / steps)),
  };
  turns.set(steps, turn);
  return turn;
}

/** One stage: pairs of transforms of `half` points become transforms of twice as many. */
function combine(real: Float64Array, imaginary: Float64Array, half: number): void {
  const turn = turnIn(half);
  for (let k = 0; k < half; k++) {
    const cos = turn.cos[k]!;
    const sin = -turn.sin[k]!;
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

import { type Biquad, butterworth } from './butterworth.ts';
import { zeroPhase } from './zero-phase.ts';

/** Everything is scored on this grid. */
export const RATE_HZ = 1000;

/**
 * Above what a leg can do on purpose (about 2 Hz: Kudzia et al., Scientific Reports 12:4935, 2022) and at the upper
 * edge of tremor.
 */
const CUTOFF_HZ = 12;

/** Mirrored samples at each end: three periods of the cutoff, so that the ends show no start-up transient. */
export const EDGE_SAMPLES = 250;

const FILTER: Biquad = butterworth(CUTOFF_HZ, RATE_HZ, 2);

/** The signal as it is scored: zero phase, 3 dB down at 12 Hz. */
export function scoringFilter(signal: Float64Array): Float64Array {
  return zeroPhase(FILTER, signal, EDGE_SAMPLES);
}

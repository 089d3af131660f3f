import { quantile } from './quantile.ts';
import { RATE_HZ } from './scoring-filter.ts';

/** Rise above the resting level that counts as braking. */
const RISE_LEVEL = 0.03;
/** Also so many times the noise at rest, so that a nervous sensor does not start a rep. */
const NOISE_FACTOR = 6;
/** Scales the median absolute deviation to a standard deviation, for normal noise. */
const MAD_TO_SD = 1.4826;
const HOLD_SAMPLES = 0.02 * RATE_HZ;
const BASELINE_SAMPLES = 0.25 * RATE_HZ;

/** What counts as braking in one signal. */
export interface BrakingThreshold {
  readonly restingLevel: number;
  readonly onLevel: number;
  readonly offLevel: number;
}

/**
 * The thresholds over the rest at the start of a signal: its first quarter of a second, or less where it rises sooner.
 *
 * @param stepLevel resolution of the sensor; the thresholds stay three steps apart.
 */
export function brakingThreshold(signal: Float64Array, stepLevel: number): BrakingThreshold {
  const start = signal.subarray(0, BASELINE_SAMPLES);
  const left = start.findIndex((level) => level > start[0]! + RISE_LEVEL);
  const baseline = left < 0 ? start : start.subarray(0, left);
  const restingLevel = quantile(baseline, 0.5) ?? 0;
  const deviations = baseline.map((level) => Math.abs(level - restingLevel));
  const noise = MAD_TO_SD * (quantile(deviations, 0.5) ?? 0);
  const rise = Math.max(RISE_LEVEL, NOISE_FACTOR * noise, 6 * stepLevel);
  return { restingLevel, onLevel: restingLevel + rise, offLevel: restingLevel + rise / 2 };
}

/**
 * First braking at or after `from`, by hysteresis: above the upper threshold and staying above the lower one for
 * 20 ms, walked back to where it left the lower one. It comes a little late on every rise (about 20 ms on a quick
 * one), which is why it is run on rep and target alike and only differences are used.
 */
export function findOnset(
  signal: Float64Array,
  { onLevel, offLevel }: BrakingThreshold,
  from = 0,
): number | null {
  for (let i = from; i < signal.length; i++) {
    if (signal[i]! > onLevel && staysAbove(signal, i, offLevel)) {
      return walkBack(signal, i, offLevel);
    }
  }
  return null;
}

function staysAbove(signal: Float64Array, from: number, level: number): boolean {
  return signal.subarray(from, from + HOLD_SAMPLES).every((value) => value > level);
}

function walkBack(signal: Float64Array, from: number, level: number): number {
  let i = from;
  while (i > 0 && signal[i - 1]! > level) i--;
  return i;
}

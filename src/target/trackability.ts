import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { keyNumbers } from './key-numbers.ts';
import { overTime } from './over-time.ts';
import type { Target } from './target.ts';

/**
 * Bandwidth of a leg that follows a force: 1.8 Hz with a standard deviation of 0.5 Hz (Kudzia et al., Sci. Rep. 12
 * (2022) 4935).
 */
const FOOT_BANDWIDTH_HZ = 2;
/** Share of the peak by which such a foot may miss the curve: the corridor at the peak. */
const LARGEST_MISS = 0.05;
/** Fastest 10 to 90 % rise and largest deceleration in racing (common practice, no source). */
const QUICKEST_RISE_S = 0.08;
const LARGEST_DECELERATION_G = 5.5;
const STEP_S = 0.005;

/** Reasons why a foot cannot follow the target or a car cannot do it, each a sentence; empty for a sound target. */
export function trackWarnings(target: Target): readonly string[] {
  const numbers = keyNumbers(target);
  const warnings: string[] = [];
  if (numbers.riseS < QUICKEST_RISE_S)
    warnings.push(
      `The rise takes ${numbers.riseS.toFixed(3)} s from 10 to 90 %; no foot is quicker than about ${QUICKEST_RISE_S} s.`,
    );
  const miss = footMiss(target);
  if (miss.level > LARGEST_MISS * target.peakLevel)
    warnings.push(
      `A foot that follows ${FOOT_BANDWIDTH_HZ} Hz misses the curve by ${(100 * miss.level).toFixed(1)} % at ${miss.timeS.toFixed(2)} s; make it longer or rounder there.`,
    );
  const decelerationG = (numbers.peakDecelerationMps2 ?? 0) / STANDARD_GRAVITY_MPS2;
  if (decelerationG > LARGEST_DECELERATION_G)
    warnings.push(
      `Speeds and distance ask for ${decelerationG.toFixed(1)} g at the peak; check entry_speed, slowest_speed and brake_point_m.`,
    );
  return warnings;
}

/**
 * How far the curve after the peak is from itself smoothed to the foot's bandwidth: what a foot that sees it coming
 * cannot help missing. The smoothing is a Gaussian whose power at the bandwidth is one half. The rise is left out: it
 * is one ballistic push and is judged by its key points.
 */
export function footMiss(target: Target): { readonly level: number; readonly timeS: number } {
  const { level, marks } = overTime(target);
  const afterPeak = (timeS: number): number => level.at(Math.max(timeS, marks.peak));
  const deviationS = Math.sqrt(Math.LN2) / (2 * Math.PI * FOOT_BANDWIDTH_HZ);
  let worst = { level: 0, timeS: marks.peak };
  for (let timeS = marks.peak; timeS <= marks.brakeOff + 0.2; timeS += STEP_S) {
    const miss = Math.abs(smoothed(afterPeak, timeS, deviationS) - afterPeak(timeS));
    if (miss > worst.level) worst = { level: miss, timeS };
  }
  return worst;
}

function smoothed(f: (timeS: number) => number, timeS: number, deviationS: number): number {
  const reach = Math.ceil((4 * deviationS) / STEP_S);
  let sum = 0;
  let weights = 0;
  for (let i = -reach; i <= reach; i++) {
    const weight = Math.exp(-(((i * STEP_S) / deviationS) ** 2) / 2);
    sum += weight * f(timeS + i * STEP_S);
    weights += weight;
  }
  return sum / weights;
}

import {
  findNearPeak,
  findPeak,
  findRelease,
  type KeyIndices,
  plateauGain,
} from './key-indices.ts';
import type { RepSignal } from './rep-signal.ts';
import { RATE_HZ } from './scoring-filter.ts';
import type { TargetReference } from './target-reference.ts';

/** A rep laid on its target's grid so that both start to brake at the same grid point. */
export interface AlignedRep {
  readonly levels: Float64Array;
  readonly keys: KeyIndices;
  /** Record time of a grid point. */
  timeS(index: number): number;
}

/**
 * Moves the rep by whole grid points so that its onset meets the target's; beyond its ends the first and last level
 * hold. When the rep was late as a whole, that is the start error and not an error of the release.
 */
export function alignRep(rep: RepSignal, onset: number, reference: TargetReference): AlignedRep {
  const shift = onset - reference.keys.onset;
  const last = rep.levels.length - 1;
  const levels = Float64Array.from(
    reference.levels,
    (_, i) => rep.levels[Math.min(Math.max(i + shift, 0), last)]!,
  );
  return {
    levels,
    keys: findKeys(levels, rep.threshold.offLevel, reference),
    timeS: (index) => rep.startS + (index + shift) / RATE_HZ,
  };
}

function findKeys(
  levels: Float64Array,
  offLevel: number,
  { levels: target, keys, guide }: TargetReference,
): KeyIndices {
  const peak = findPeak(levels, keys.onset, guide);
  const peakLevel = levels[peak]!;
  const gain = plateauGain(levels, target, keys.nearPeak, guide.mark) ?? peakLevel / keys.peakLevel;
  return {
    onset: keys.onset,
    peak,
    peakLevel,
    nearPeak: findNearPeak(levels, keys.onset, peak, peakLevel),
    ...findRelease(levels, peak, guide.markLevel * gain, offLevel),
  };
}

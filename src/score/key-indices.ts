import { firstAtOrAbove, highest, lastFallBelow } from './crossings.ts';
import { quantile } from './quantile.ts';

/** Key points as places on the scoring grid; null where the pressure never fell that far. */
export interface KeyIndices {
  readonly onset: number;
  readonly peak: number;
  readonly peakLevel: number;
  readonly nearPeak: number;
  readonly startOfRelease: number | null;
  readonly halfRelease: number | null;
  readonly finalRelease: number | null;
  readonly brakeOff: number | null;
}

/** What the target says about where to look. */
export interface KeyPointGuide {
  /** Last grid point at which the peak may be. */
  readonly peakSearchEnd: number;
  /** Grid point of the target's start of release. */
  readonly mark: number;
  /** The target's level there. */
  readonly markLevel: number;
}

/** The peak of a braking that starts at `onset`: the highest level until shortly after the start of release. */
export function findPeak(levels: Float64Array, onset: number, guide: KeyPointGuide): number {
  return highest(levels, onset, Math.max(onset, guide.peakSearchEnd));
}

/** First point at 90 % of a peak level. */
export function findNearPeak(
  levels: Float64Array,
  onset: number,
  peak: number,
  peakLevel: number,
): number {
  return firstAtOrAbove(levels, 0.9 * peakLevel, onset, peak) ?? peak;
}

/**
 * How heavy a rep was on the way to the start of release, as a factor on the target: the upper tercile of the ratio,
 * which neither a short overshoot of the hit nor an early release moves much.
 */
export function plateauGain(
  levels: Float64Array,
  target: Float64Array,
  nearPeak: number,
  mark: number,
): number | null {
  const ratios: number[] = [];
  for (let i = nearPeak; i <= mark; i++) {
    if (target[i]! > 0) ratios.push(levels[i]! / target[i]!);
  }
  return quantile(ratios, 2 / 3);
}

/**
 * The falls through 90, 50 and 10 % of the plateau, each the last one after the peak. The plateau is the target's
 * level where the coach set the start of release, times the rep's own gain: where pressure already bleeds away on the
 * straight, the release is found at the mark and not in the bleed, and on a flat target it is the plateau itself.
 */
export function findRelease(
  levels: Float64Array,
  peak: number,
  plateau: number,
  offLevel: number,
): Pick<KeyIndices, 'startOfRelease' | 'halfRelease' | 'finalRelease' | 'brakeOff'> {
  const last = levels.length - 1;
  return {
    startOfRelease: lastFallBelow(levels, 0.9 * plateau, peak, last),
    halfRelease: lastFallBelow(levels, 0.5 * plateau, peak, last),
    finalRelease: lastFallBelow(levels, 0.1 * plateau, peak, last),
    brakeOff: lastFallBelow(levels, offLevel, peak, last),
  };
}

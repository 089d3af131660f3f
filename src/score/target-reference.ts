import { Problem } from '../problem.ts';
import type { Target } from '../target/target.ts';
import { columnOf } from '../trace/column-of.ts';
import { type GridWindow, slice } from './grid-window.ts';
import {
  findNearPeak,
  findPeak,
  findRelease,
  type KeyIndices,
  type KeyPointGuide,
} from './key-indices.ts';
import { onOffError } from './on-off-error.ts';
import { brakingThreshold, findOnset } from './onset.ts';
import { releaseSpeed, steepestFall } from './release-rate.ts';
import { RATE_HZ, scoringFilter } from './scoring-filter.ts';
import { spectralArcLength } from './smoothness.ts';

/** Before the rise, so that there is a resting level to rise from. */
const LEAD_S = 0.3;
/** After brake off, so that a late and slow rep is seen to its end. */
const TAIL_S = 1.25;
/** How far the release window reaches before the start of release and beyond brake off. */
const WINDOW_BEFORE_S = 0.05;
const WINDOW_AFTER_S = 0.25;
/** Smoothness is taken over a little less. */
const SMOOTHNESS_AFTER_S = 0.199;
/** How long after the start of release the peak may still come. */
const PEAK_AFTER_S = 0.25;

/** The target as the score sees it: on the 1 kHz grid, through the same filter, with its own key points. */
export interface TargetReference {
  readonly target: Target;
  /** Target time of grid point 0. */
  readonly originS: number;
  readonly levels: Float64Array;
  readonly guide: KeyPointGuide;
  readonly keys: KeyIndices;
  /** Where the release error is taken. */
  readonly release: GridWindow;
  readonly smoothnessWindow: GridWindow;
  /** Null for a target that does not move there. */
  readonly smoothness: number | null;
  /** Level per second. */
  readonly steepestFall: number;
  readonly onOffErrorLevel: number;
}

const REFERENCES = new WeakMap<Target, TargetReference>();

/**
 * The reference of a target, computed once per target object.
 *
 * @throws Problem for a target over distance, and for one that never rises.
 */
export function targetReference(target: Target): TargetReference {
  const known = REFERENCES.get(target);
  if (known !== undefined) return known;
  requireTime(target);
  const reference = build(target);
  REFERENCES.set(target, reference);
  return reference;
}

function build(target: Target): TargetReference {
  const { marks } = target;
  const originS = marks.rise - LEAD_S;
  const at = (timeS: number): number => Math.round((timeS - originS) * RATE_HZ);
  const levels = scoringFilter(sampled(target, originS, at(marks.brakeOff + TAIL_S) + 1));
  const guide = {
    peakSearchEnd: at(marks.startOfRelease + PEAK_AFTER_S),
    mark: at(marks.startOfRelease),
    markLevel: target.level.at(marks.startOfRelease),
  };
  const keys = findKeys(target, levels, guide);
  const from = at(marks.startOfRelease - WINDOW_BEFORE_S);
  const release = { from, to: at(marks.brakeOff + WINDOW_AFTER_S) };
  const smoothnessWindow = { from, to: at(marks.brakeOff + SMOOTHNESS_AFTER_S) };
  let smoothness: number | null | undefined;
  return {
    target,
    originS,
    levels,
    guide,
    keys,
    release,
    smoothnessWindow,
    // It costs more than all the rest, and not everybody who needs a target's key points asks for it.
    get smoothness() {
      smoothness ??= spectralArcLength(releaseSpeed(levels, smoothnessWindow), RATE_HZ);
      return smoothness;
    },
    steepestFall: steepestFall(levels, { from: keys.peak, to: release.to }),
    onOffErrorLevel: onOffError(slice(levels, release)),
  };
}

/**
 * The target's own key points. The 90 % of the rise is taken from the target's named peak: the filter lifts the
 * corner of a plateau by some tenths of a percent, which belongs to the rep's own peak but not to the target's.
 */
function findKeys(target: Target, levels: Float64Array, guide: KeyPointGuide): KeyIndices {
  const threshold = brakingThreshold(levels, 0);
  const onset = requireOnset(target, findOnset(levels, threshold));
  const peak = findPeak(levels, onset, guide);
  return {
    onset,
    peak,
    peakLevel: levels[peak]!,
    nearPeak: findNearPeak(levels, onset, peak, target.peakLevel),
    ...findRelease(levels, peak, guide.markLevel, threshold.offLevel),
  };
}

function sampled(target: Target, originS: number, count: number): Float64Array {
  return columnOf(count, (i) => target.level.at(originS + i / RATE_HZ));
}

function requireTime(target: Target): void {
  if (target.domain === 'time') return;
  throw new Problem('this target runs over distance, and a rep is scored over time', {
    where: target.id,
    next: 'Take the target over time first, or choose one that runs over time.',
  });
}

function requireOnset(target: Target, onset: number | null): number {
  if (onset !== null) return onset;
  throw new Problem('this target never rises, so no rep can be held against it', {
    where: target.id,
    next: 'Give it a peak above 3 % of full scale that holds for at least 20 ms.',
  });
}

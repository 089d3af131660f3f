import { desirability } from './desirability.ts';
import type { ScoreParts } from './rep-score.ts';
import {
  PART_FLOOR,
  PEAK_LIMITS,
  RATE_RATIO_LIMITS,
  REAPPLIED_LIMITS,
  RELEASE_FULL_LEVEL,
  RELEASE_NONE_SHARE,
  RISE_LIMITS_S,
  WEIGHTS,
} from './score-version.ts';

/** What the score is made of. */
export interface ScoredErrors {
  readonly releaseErrorLevel: number;
  readonly onOffErrorLevel: number;
  readonly peakError: number;
  readonly riseErrorS: number;
  readonly reapplied: number;
  /** Null where the record does not allow a rate; then it is left out. */
  readonly rateRatio: number | null;
}

/** Turns errors into the three desirabilities. */
export function scoreParts(errors: ScoredErrors): ScoreParts {
  const releaseLimits = {
    full: RELEASE_FULL_LEVEL,
    none: RELEASE_NONE_SHARE * errors.onOffErrorLevel,
  };
  const peak = desirability(Math.abs(errors.peakError), PEAK_LIMITS);
  const rise = desirability(Math.abs(errors.riseErrorS), RISE_LIMITS_S);
  const reapplied = desirability(errors.reapplied, REAPPLIED_LIMITS);
  const rate = errors.rateRatio === null ? 1 : desirability(errors.rateRatio, RATE_RATIO_LIMITS);
  return {
    release: desirability(errors.releaseErrorLevel, releaseLimits),
    hit: Math.max(PART_FLOOR, Math.min(peak, rise)),
    smooth: Math.max(PART_FLOOR, Math.min(reapplied, rate)),
  };
}

/** Weighted geometric mean of the parts, 0..100: no part buys out another, and no release is no score. */
export function scoreOf({ release, hit, smooth }: ScoreParts): number {
  return 100 * release ** WEIGHTS.release * hit ** WEIGHTS.hit * smooth ** WEIGHTS.smooth;
}

/** Points lost to each part, in proportion to its weighted logarithm; they add up to 100 - score. */
export function pointsLost(parts: ScoreParts): ScoreParts {
  const lost = 100 - scoreOf(parts);
  if (parts.release === 0) return { release: lost, hit: 0, smooth: 0 };
  const release = logLoss(WEIGHTS.release, parts.release);
  const hit = logLoss(WEIGHTS.hit, parts.hit);
  const smooth = logLoss(WEIGHTS.smooth, parts.smooth);
  const all = release + hit + smooth;
  if (!(all > 0)) return { release: 0, hit: 0, smooth: 0 };
  return {
    release: (lost * release) / all,
    hit: (lost * hit) / all,
    smooth: (lost * smooth) / all,
  };
}

/** Finite for every share above 0; the 0 that is added turns the -0 of a share of 1 into 0. */
function logLoss(weight: number, share: number): number {
  return -weight * Math.log(share) + 0;
}

import { desirability } from './desirability.ts';
import {
  ANTI_LOCK_LIMITS_S,
  BRAKE_POINT_LIMITS_S,
  BRAKE_POINT_SHARE,
  LOCKED_LIMITS_S,
} from './live-score-version.ts';
import type { ScoreParts } from './rep-score.ts';
import { pointsLost, type ScoredErrors, scoreOf, scoreParts } from './score-parts.ts';
import { PART_FLOOR, RELEASE_FULL_LEVEL, RELEASE_NONE_SHARE } from './score-version.ts';

/** What version 2 is made of beside the errors of version 1. */
export interface LiveErrors extends ScoredErrors {
  readonly brakePointErrorS: number;
  readonly lockedS: number;
  readonly antiLockTurnedS: number;
}

/** The parts of a version 2 score. */
type LiveParts = Required<ScoreParts>;

/**
 * The parts of version 1 with three differences.
 *
 * Release: full marks go no further than half of what earns nothing, so that an on/off foot earns nothing even where
 * so little release was left that a dump comes close to it.
 *
 * Smooth: wheels locked for longer than it takes to notice, and anti-lock still at work after turn-in. A lock-up cannot
 * cost through the release: a foot that stays on is hardly above the limit as a level, the followed target takes the
 * lost grip into account, and the foot that eases as it should would be the one that pays.
 *
 * Brake point: early or late, in time, so that it means the same at every speed.
 */
export function liveParts(errors: LiveErrors): LiveParts {
  const { release: _, ...base } = scoreParts(errors);
  const none = RELEASE_NONE_SHARE * errors.onOffErrorLevel;
  const full = Math.min(RELEASE_FULL_LEVEL, none / 2);
  const grip = Math.min(
    desirability(errors.lockedS, LOCKED_LIMITS_S),
    desirability(errors.antiLockTurnedS, ANTI_LOCK_LIMITS_S),
  );
  return {
    release: desirability(errors.releaseErrorLevel, { full, none }),
    hit: base.hit,
    smooth: Math.max(PART_FLOOR, Math.min(base.smooth, grip)),
    brakePoint: desirability(Math.abs(errors.brakePointErrorS), BRAKE_POINT_LIMITS_S),
  };
}

/**
 * Version 1's score of the parts, of which the worst brake point takes a tenth: 10 points at most, however early or
 * late.
 */
export function liveScoreOf(parts: LiveParts): number {
  return scoreOf(parts) * brakePointFactor(parts);
}

/** Points lost to each part, in proportion to its logarithm as in version 1; they add up to 100 - score. */
export function livePointsLost(parts: LiveParts): LiveParts {
  const lost = 100 - liveScoreOf(parts);
  const base = pointsLost(parts);
  const baseLog = Math.log(100 / scoreOf(parts));
  const log = Math.log(1 / brakePointFactor(parts));
  if (parts.release === 0 || baseLog + log === 0) return { ...base, brakePoint: 0 };
  const share = log / (baseLog + log);
  const rest = scoreOf(parts) === 100 ? 0 : (lost * (1 - share)) / (100 - scoreOf(parts));
  return {
    release: base.release * rest,
    hit: base.hit * rest,
    smooth: base.smooth * rest,
    brakePoint: lost * share,
  };
}

function brakePointFactor({ brakePoint }: LiveParts): number {
  return 1 - BRAKE_POINT_SHARE * (1 - brakePoint);
}

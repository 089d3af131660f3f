import type { Limits } from './score-version.ts';

/**
 * Version 2 of the score, for the live car: version 1 against what the grip allowed from the speed the car really had,
 * and the brake point. Provisional like version 1, and never compared with it.
 */
export const LIVE_SCORE_VERSION = 2;

/** What the brake point is worth, as a share of the score: the release stays the skill that is trained. */
export const BRAKE_POINT_SHARE = 0.1;
/**
 * Early or late by this much, s. Moments are anticipated to some 20 to 50 ms; a quarter of a second is more than a car
 * length in any braking zone. Provisional.
 */
export const BRAKE_POINT_LIMITS_S: Limits = { full: 0.05, none: 0.25 };

/** Time a locked wheel takes to be answered, s: simple reaction (Woods et al., Frontiers in Human Neuroscience 9, 2015). */
export const NOTICE_S = 0.213;
/** Locked for longer than that, s. Provisional. */
export const LOCKED_LIMITS_S: Limits = { full: 0.05, none: 0.8 };
/** Anti-lock at work after turn-in, s. Provisional. */
export const ANTI_LOCK_LIMITS_S: Limits = { full: 0.1, none: 0.8 };

/** After a lock-up the foot may stay below the limit for so long while it comes back, s. */
export const REAPPLY_S = 0.3;
/** And is held to the limit again over this much more, s. */
export const REAPPLY_FADE_S = 0.2;

/** A downshift is late by more than this after its first safe moment, s. Common practice, no source. */
export const LATE_SHIFT_S = 0.5;

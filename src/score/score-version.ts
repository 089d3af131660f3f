/**
 * Version 1 of the score. Its limits come from synthetic curves and a published leg-force accuracy, not from enough
 * real pedals: they are provisional. A change of any of them is a new version; stored scores are never rewritten.
 */
export const SCORE_VERSION = 1;

/** Smaller is better: full marks up to `full`, none from `none` on. */
export interface Limits {
  readonly full: number;
  readonly none: number;
}

/**
 * Release error that earns full marks, as a level: 2.7 % leg-force variability (Kudzia et al., Scientific Reports
 * 12:4935, 2022) times the root mean square level of a typical release window. Below it no cause is looked for.
 */
export const RELEASE_FULL_LEVEL = 0.012;
/** Share of the on/off error from which a release earns nothing. */
export const RELEASE_NONE_SHARE = 0.9;

export const PEAK_LIMITS: Limits = { full: 0.03, none: 0.3 };
export const RISE_LIMITS_S: Limits = { full: 0.03, none: 0.2 };
export const REAPPLIED_LIMITS: Limits = { full: 0.01, none: 0.25 };
export const RATE_RATIO_LIMITS: Limits = { full: 2, none: 6 };

/** Hit and smooth never fall below this, so that a good release behind a bad hit still shows. */
export const PART_FLOOR = 0.2;

/** Weights of the parts; they add up to 1. Releasing is the harder skill and the one that is trained. */
export const WEIGHTS = { release: 0.55, hit: 0.25, smooth: 0.2 } as const;

/** Share of the target's peak that a movement back up has to exceed to count. */
export const REAPPLICATION_SHARE = 0.015;
/** Share of the target's peak at which counting re-applications ends. */
export const REAPPLICATION_END_SHARE = 0.05;

/** A peak below this share of the target's is no rep at all. */
export const LEAST_PEAK_SHARE = 0.1;

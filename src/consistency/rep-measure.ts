import type { Feedback } from '../drill/drill-view.ts';

/** What has to be equal for two reps to be comparable; a change of any of it is a break in every chart and table. */
export interface Conditions {
  readonly targetVersion: string;
  /** Null for reps that were never scored. */
  readonly scoreVersion: number | null;
  readonly source: string;
  readonly sensor: string;
  readonly calibrationId: string;
  readonly foot: string;
  readonly footwear: string;
  /** Of the track, as the practice names it, for example `wet`; null where none was said. */
  readonly condition: string | null;
}

/** The numbers of a rep by its newest score version. Null where the rep held nothing to be measured. */
export interface RepNumbers {
  /** 0..100, 0 for a rep without a release. */
  readonly score: number;
  readonly releaseErrorLevel: number | null;
  /** Positive is heavy. */
  readonly averageErrorLevel: number | null;
  /** Start of release minus the target's: positive is late. */
  readonly startOfReleaseErrorS: number | null;
  /** Share of the target's peak, positive is heavy. */
  readonly peakError: number | null;
  readonly reapplications: number | null;
}

/** One rep as the statistics see it. */
export interface RepMeasure {
  readonly repId: number;
  readonly driver: string;
  readonly targetId: string;
  readonly practiceId: number;
  /** The driver's local date at the start of the practice; a practice past midnight stays on its day. */
  readonly day: string;
  readonly zone: string;
  readonly conditions: Conditions;
  readonly feedback: Feedback;
  readonly warmUp: boolean;
  /** What the driver felt, before the score was shown: words of `self-rating.ts`; null where nothing was said. */
  readonly selfRating: string | null;
  readonly voided: 'aborted' | 'device lost' | null;
  /** Null for a void rep. */
  readonly numbers: RepNumbers | null;
}

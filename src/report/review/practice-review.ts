import type { WeeksProgress } from '../../consistency/weeks/weeks-progress.ts';
import type { LatestSpread } from '../../drill/diagnosis/spread-curve.ts';
import type { SteeringCoupling } from '../../drill/diagnosis/steering-coupling.ts';
import type { BlockSummary, Feedback } from '../../drill/drill-view.ts';
import type { RepPhase } from '../../drill/plan/practice-plan.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { TextUnits } from '../../unit-text.ts';
import type { Along } from '../picture/block-axis.ts';

/** One rep as its coach reads of it. */
export interface ReviewedRep {
  /** In the practice, from 1. */
  readonly number: number;
  readonly feedback: Feedback;
  readonly voided: 'aborted' | 'device lost' | null;
  /** Of the newest score version; null for a void rep. */
  readonly outcome: RepOutcome | null;
  /** What was said about it; empty where nothing was. */
  readonly words: string;
  /** The late call it was driven with; null for none. */
  readonly call: string | null;
  readonly selfRating: string | null;
  /** Whether it is one of the overlay. */
  readonly isDrawn: boolean;
  /** Null where no wheel was recorded. */
  readonly coupling: SteeringCoupling | null;
}

/** The reps of one block on one target. */
export interface BlockReview {
  /** In the practice, from 1. */
  readonly block: number;
  readonly phase: RepPhase;
  readonly targetId: string;
  /** The target's own name, or its id where its file is gone. */
  readonly targetName: string;
  readonly reps: readonly ReviewedRep[];
  readonly drawn: DrawnBlock | { readonly kind: 'not drawn'; readonly reason: string };
}

export interface DrawnBlock {
  readonly kind: 'drawn';
  readonly summary: BlockSummary;
  /** Of speeds and places. */
  readonly units: TextUnits;
  readonly along: Along;
  /** Null for a target that leaves steering to the driver. */
  readonly target: SteeringCoupling | null;
}

export interface ReviewNote {
  /** Local date and time of day. */
  readonly at: string;
  /** What it is about, for example `rep 6`; empty for the practice as a whole. */
  readonly about: string;
  readonly text: string;
}

/** One series over the weeks. */
export interface SeriesReview {
  readonly progress: WeeksProgress;
  /** Of places. */
  readonly units: TextUnits;
  /** Null where the page shows the spread of its own practice. */
  readonly spread: LatestSpread | null;
}

/** What a practice came to, with how it stands in the weeks up to it. Nothing in it is escaped yet. */
export interface PracticeReview {
  readonly practice: {
    readonly number: number;
    readonly driver: string;
    readonly startedAt: string;
    /** Source, sensor, foot and footwear, in words. */
    readonly conditions: readonly string[];
  };
  readonly blocks: readonly BlockReview[];
  readonly series: readonly SeriesReview[];
  readonly notes: readonly ReviewNote[];
  readonly cautions: readonly string[];
}

/** Weeks up to today. */
export interface WeeksReview {
  readonly today: string;
  readonly weeks: number;
  readonly series: readonly SeriesReview[];
  readonly notes: readonly ReviewNote[];
  readonly cautions: readonly string[];
}

import type { RepOutcome } from '../../score/rep-score.ts';
import type { Target } from '../../target/target.ts';
import type { LivePlan } from '../live/live-plan.ts';
import type { LiveRep } from '../live/live-rep.ts';
import type { PracticeBlock } from './practice-blocks.ts';
import type { FeedbackRule, HardReps } from './practice-plan.ts';

/** What a planned rep is driven on, found and built before the practice. */
export interface PracticeZone {
  /** Over time and plain; of the live car the one of a rep at its start temperatures without a call. */
  readonly target: Target;
  /** Null for a target over time. */
  readonly live: { readonly plan: LivePlan; readonly first: LiveRep } | null;
  /** Reps of this version before this practice. */
  readonly repsInLife: number;
  /** Outcomes of the last of them, oldest first. */
  readonly recent: readonly RepOutcome[];
  /** Release errors of earlier reps under the plan's condition; null for a plan without one. */
  readonly reference: readonly number[] | null;
  /** What the driver is to do beside following the target, in a few words; null for nothing. */
  readonly task: string | null;
}

/** A practice with everything decided but what the driver does. */
export interface PlannedPractice {
  readonly name: string;
  /** At least one. */
  readonly blocks: readonly PracticeBlock<PracticeZone>[];
  readonly feedback: FeedbackRule;
  readonly mostShownInARow: number;
  readonly hardReps: HardReps;
  /** Kept with the reps of the blocks. */
  readonly condition: string | null;
}

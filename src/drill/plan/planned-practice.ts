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
  /** The driver's wheel says how fast the release goes; only over time, on a target with steering. */
  readonly paced: boolean;
  /** Road to the next zone in the laps of an event, s; without it the rest between reps is the plan's. */
  readonly gapS?: number;
}

/** A practice with everything decided but what the driver does. */
export interface PlannedPractice {
  readonly name: string;
  /** What the driver has to know about it beforehand, one sentence each. */
  readonly remarks: readonly string[];
  /** Zones of a lap where the practice is laps of an event. */
  readonly lapZones?: number;
  /** At least one. */
  readonly blocks: readonly PracticeBlock<PracticeZone>[];
  readonly feedback: FeedbackRule;
  readonly mostShownInARow: number;
  readonly hardReps: HardReps;
  /** Kept with the reps of the blocks. */
  readonly condition: string | null;
}

import type { RepOutcome } from '../score/rep-score.ts';
import type { Target } from '../target/target.ts';
import type { TextUnits } from '../unit-text.ts';
import type { DisplaySettings } from './display/display-settings.ts';
import type { Feedback } from './drill-view.ts';
import type { LearnedButton } from './learned-buttons.ts';
import type { LivePlan } from './live/live-plan.ts';
import type { PlannedPractice } from './plan/planned-practice.ts';

/** Which axes the rig has beside the brake; the others are recorded as absent, not as empty. */
export interface RigAxes {
  readonly throttle: boolean;
  readonly clutch: boolean;
  readonly steering: boolean;
}

/** Lengths of the parts of a rep in seconds. */
export interface RepTiming {
  /** From the foot being off the brake to the cue. */
  readonly countdownS: number;
  /** How long a result is held back, so that the driver can feel first (2 to 3 s). */
  readonly holdS: number;
  /** How long the result stands alone before the rest begins. */
  readonly showS: number;
  readonly restS: number;
}

export const REP_TIMING: RepTiming = { countdownS: 3, holdS: 2.5, showS: 2.5, restS: 5 };

/** How long a result is held back at least where the driver is asked for a rating first. */
export const RATED_HOLD_S = 4;

/** Reps in a block unless the driver asks for another number. */
export const BLOCK_REPS = 10;

/** Everything that is decided before a rep; with a plan, target and live car are those of the rep under way. */
export interface DrillSetup {
  /**
   * Over time; a target over distance has to be turned into one over time first. With a live car the one of a rep at
   * the car's start temperatures without a call.
   */
  readonly target: Target;
  /** Null for the drill over time. */
  readonly live: LivePlan | null;
  /** Null for blocks of one target, one like the other. */
  readonly plan: PlannedPractice | null;
  /** Reps in a block. */
  readonly reps: number;
  /** Decides which reps are shown once the feedback thins out. */
  readonly seed: number;
  /** Reps of this target version before this practice. */
  readonly repsInLife: number;
  /** Outcomes of the newest of them, newest last. */
  readonly recent: readonly RepOutcome[];
  /** Hours since the driver's last rep of anything; null for a new driver. */
  readonly hoursSinceLastRep: number | null;
  /** `null` for the schedule, else the same for every rep. */
  readonly feedback: Exclude<Feedback, 'first-of-day'> | null;
  /** True where the driver rates each rep before its result is shown. */
  readonly asksRating: boolean;
  /**
   * Seconds that a result waits for that rating, which ends the wait; null where it is held back for `RATED_HOLD_S`,
   * rated or not.
   */
  readonly ratingWaitS: number | null;
  readonly axes: RigAxes;
  /** What the wheel's buttons do; empty where none was learned. */
  readonly buttons: readonly LearnedButton[];
  /** One count of the brake's sensor as a level; 0 where unknown. */
  readonly brakeStepLevel: number;
  /** Force of the brake at the driver's full scale, N; null for a rig that was never put under known loads. */
  readonly ownFullScaleN: number | null;
  /** True where a person drives who never did before: the cautions come first. */
  readonly isFirstRun: boolean;
  /** What the driver has to be told of the force that levels stand for; null for nothing. */
  readonly forceRemark: string | null;
  /** As the driver left it. */
  readonly display: DisplaySettings;
  readonly timing: RepTiming;
  /** What speeds are told in. */
  readonly units: TextUnits;
}

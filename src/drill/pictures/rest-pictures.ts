import type { LivePlan } from '../../live/live-view.ts';
import type { GgLimits } from '../../target/derive/gg-limits.ts';
import type { GripTrace } from '../../target/derive/grip-trace.ts';
import type { SteeringCoupling } from '../diagnosis/steering-coupling.ts';

/** Reps in the order in which they were driven. */
export interface RestPictures {
  /** Null in a drill over time. */
  readonly gg: {
    readonly limits: GgLimits;
    readonly target: GripTrace;
    readonly own: readonly GripTrace[];
  } | null;
  /** Null where no wheel was recorded. */
  readonly coupling: {
    readonly target: SteeringCoupling | null;
    readonly own: readonly SteeringCoupling[];
  } | null;
  /** After a block of the live car, with the brake point of every rep; null else. */
  readonly above: LivePlan | null;
}

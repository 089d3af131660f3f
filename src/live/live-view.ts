import type { PlanPoint } from '../corner/plan-view.ts';
import type { LiveEvent } from './live-event.ts';
import type { CallWord } from './live-zone.ts';

/** A quantity along the road. Places are m from turn-in, ascending, negative before it. */
export interface PlaceTrack {
  readonly placeM: Float64Array;
  readonly value: Float64Array;
}

/** Something beside the road that comes closer. */
export interface RoadMark {
  readonly sM: number;
  readonly kind: 'board' | 'coach' | 'brake' | 'turn-in';
  /** `150`, the coach's own word, `brake`, `turn-in`. */
  readonly word: string;
}

/** A curve of the target and what is to be seen of the driver's own. */
interface LivePair {
  readonly target: PlaceTrack | null;
  readonly own: PlaceTrack | null;
}

/** The corner from above with what was done where, after the rep. */
export interface LivePlan {
  readonly road: readonly PlanPoint[];
  readonly marks: readonly {
    readonly sM: number;
    readonly kind:
      | 'target brake point'
      | 'brake point'
      | 'target start of release'
      | 'start of release'
      | 'turn-in'
      | 'apex'
      | 'slowest'
      | 'bump'
      | 'target downshift'
      | 'downshift'
      | 'lock-up';
  }[];
}

/** What the drill over distance shows beside what every drill shows. */
export interface LiveView {
  readonly carName: string;
  readonly variant: string;
  /** The strip until the brake takes hold, then one picture over distance. */
  readonly stage: 'waiting' | 'approach' | 'zone' | 'over';
  /** Where the car is, m from turn-in. */
  readonly placeM: number;
  readonly speedMps: number;
  readonly targetSpeedMps: number | null;
  /** Ascending; the brake mark only on shown reps. */
  readonly marks: readonly RoadMark[];
  /** A late call that the driver has been told; null before it comes. */
  readonly call: CallWord | null;
  /** From where to where the picture goes, m from turn-in: the target's brake point to the slowest point. */
  readonly fromM: number;
  readonly toM: number;
  readonly turnInM: number;
  readonly slowestM: number;
  /** The target's start of release; null where the target is not to be seen. */
  readonly startOfReleaseM: number | null;
  /** Level, 0..1. */
  readonly level: LivePair;
  /** Half width of the corridor around the target's level. */
  readonly corridorLevel: PlaceTrack | null;
  /** False where the rig has no steering: braking only. */
  readonly hasWheel: boolean;
  /** Degrees at the wheel, left positive; `own` null without a wheel. */
  readonly steeringDeg: LivePair;
  /** What has happened so far, as far as it may be seen. */
  readonly events: readonly LiveEvent[];
  /** Grip asked for over grip there is; null where the rep hides it. */
  readonly frontUse: number | null;
  readonly rearUse: number | null;
  readonly locked: 'front' | 'rear' | 'both' | null;
  readonly gear: number;
  readonly rpm: number;
  readonly revLimitRpm: number;
  /** Pedal force at full scale that this target's peak needs now, N, and how much more than cold; null without fade. */
  readonly fade: { readonly peakForceN: number; readonly coldPeakForceN: number } | null;
  /** What has to be said beside the picture: the rail, the missing wheel, who shifts. */
  readonly remarks: readonly string[];
  readonly plan: LivePlan | null;
}

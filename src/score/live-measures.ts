import type { LiveEvent } from '../live/live-event.ts';

/** Wheels beyond their grip, or anti-lock keeping them from it. */
export type GripEvent = Extract<LiveEvent, { kind: 'lock-up' | 'anti-lock' }>;

/** A shift against the places where it was safe. */
export interface ScoredShift {
  readonly fromGear: number;
  readonly toGear: number;
  /** m from turn-in. */
  readonly atM: number;
  /** Earliest place without over-rev and without the rear axle letting go, at the speed the car really had; null for none. */
  readonly earliestM: number | null;
  readonly verdict: 'safe' | 'too early' | 'over-rev' | 'late';
  readonly rpm: number;
}

/**
 * What the live car adds to a score of version 2: the rep against the target and against the grip the car really had.
 * Rep minus target; null where the rep never got there.
 */
export interface LiveMeasures {
  /** Later is positive. */
  readonly brakePointErrorM: number;
  readonly brakePointErrorS: number;
  readonly slowestSpeedMps: number;
  /** Positive is too fast. */
  readonly slowestSpeedErrorMps: number;
  readonly startOfReleaseErrorM: number | null;
  /** Too fast is positive; where the target lets the pressure go. */
  readonly releaseSpeedErrorMps: number;
  /** Level where the path is tightest, and minus what the grip allowed there; null where it never got there. */
  readonly apexLevel: number | null;
  readonly apexLevelError: number | null;
  /** Mean use of the axle that has less to spare, over the zone; 1 is all there is. */
  readonly gripUse: number;
  /** In driving order. */
  readonly lockUps: readonly GripEvent[];
  readonly antiLock: readonly GripEvent[];
  /** Time the foot stayed on with locked wheels beyond what it needs to notice, where the foot had locked them. */
  readonly lockedS: number;
  /** Anti-lock still at work after turn-in while the foot gave more than the target. */
  readonly antiLockTurnedS: number;
  /** Zone lost to tyres beyond their limit, m. */
  readonly lengthenedM: number;
  readonly shifts: readonly ScoredShift[];
  /** Downshifts of the target that were never made. */
  readonly missedDownshifts: number;
  /**
   * Time to the slowest point minus the target's, from one common place on the approach; null where it never got
   * there. Arriving too fast gains here what the corner then takes back.
   */
  readonly timeLostS: number | null;
  /** Steering against the rail's, null without a wheel: turn-in earlier is negative, more angle is above 1. */
  readonly turnInErrorM: number | null;
  readonly steeringRatio: number | null;
}

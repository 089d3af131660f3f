import type { LiveEvent } from '../live/live-event.ts';

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
  /** Level where the path is tightest, and minus the target's. */
  readonly apexLevel: number;
  readonly apexLevelError: number;
  /** Mean use of the axle that has less to spare, over the zone; 1 is all there is. */
  readonly gripUse: number;
  /** Longest stretch over the limit of either axle, and whether the anti-lock was out before turn-in. */
  readonly lockUps: readonly LiveEvent[];
  readonly antiLock: readonly LiveEvent[];
  /** Zone lost to tyres beyond their limit, m. */
  readonly lengthenedM: number;
  readonly shifts: readonly ScoredShift[];
  /** Time to the slowest point minus the target's, from one common place on the approach. */
  readonly timeLostS: number;
  /** Steering against the rail's, null without a wheel: turn-in earlier is negative, more angle is above 1. */
  readonly turnInErrorM: number | null;
  readonly steeringRatio: number | null;
}

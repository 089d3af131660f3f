/** What limits the braking at a place. */
export type Limiter =
  | 'front axle'
  | 'rear axle'
  /** The point mass has no axles. */
  | 'grip'
  /** How fast a foot can press or release. */
  | 'foot'
  /** Load that is still on its way to the front axle. */
  | 'load'
  /** What the engine pulls, and the driven axle carries, between two places where the corner limits. */
  | 'throttle'
  /** The speed at which the corner can be driven at all. */
  | 'corner';

/** A foot that only rests on the brake, N: all that comes with it is there. */
export const JUST_ON_N: number = Number.MIN_VALUE;

/** The most the car can do at a place and speed. */
export interface BrakingLimit {
  /** Total deceleration along the path, m/s^2, drag and slope included; may be negative downhill. */
  readonly decelerationMps2: number;
  /** Friction-brake force of both axles, N. */
  readonly brakeForceN: number;
  readonly limiter: Limiter;
}

/**
 * A car on a path at the limit of grip, seen by the speed solver. Speeds are squared (w = v^2, m^2/s^2): along a path
 * dw/ds = -2 D is linear where v' is not.
 */
export interface BrakingModel {
  /**
   * @param mostN brake force that a foot gives at most, N: where the car could do more, it is all that is asked for, and
   *   the limiter is the foot; whatever the grip allows if left out
   */
  limit(sM: number, speedSquared: number, mostN?: number): BrakingLimit;
  /** Deceleration with less than the most brake force, m/s^2; with none the foot is off the brake. */
  decelerationMps2(sM: number, speedSquared: number, brakeForceN: number): number;
  /** Largest squared speed at which the corner can be driven at all at this place; Infinity on a straight. */
  cornerLimit(sM: number): number;
  /**
   * Deceleration at a distance before the slowest point, for the first step away from it, where the limit's own
   * equation has no unique solution; null where the equation is regular.
   */
  releaseLaw(slowestM: number): ((beforeM: number) => number) | null;
}

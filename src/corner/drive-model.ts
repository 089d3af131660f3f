/** A car at full throttle on a path, as the forward pass asks it. Speeds are squared (w = v^2, m^2/s^2). */
export interface DriveModel {
  /** Acceleration along the path, m/s^2; a null gear is an open clutch: nothing drives. */
  accelerationMps2(sM: number, w: number, gear: number | null): number;
  /** Largest squared speed at a place: what the corner, what comes after it and the last gear allow. */
  ceiling(sM: number): number;
  /** Squared speed at which a gear is shifted up; Infinity in the highest. */
  upshiftSquared(gear: number): number;
  /** Time without drive that an upshift takes, s. */
  readonly shiftS: number;
}

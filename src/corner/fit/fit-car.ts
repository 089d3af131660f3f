/** What a named car adds to a log: what it could have done, and what its wheel says. */
export interface FitCar {
  readonly name: string;
  readonly gears: number;
  /** Most it slows on a flat straight with the throttle closed in a gear it has, m/s^2, all of the grip used. */
  decelerationMps2(speedMps: number, gear: number): number;
  /** Smallest radius that it carries at a speed with a share of its grip, m. */
  radiusM(speedMps: number, gripShare: number): number;
  /** What its wheel asks for per rad of curvature: steering at the wheel over curvature, rad m. */
  steeringPerCurvature(speedMps: number): number;
  /** Lowest gear, from second up, that does not over-rev at a speed; first is for starting (common practice, no source). */
  lowestGear(speedMps: number): number;
}

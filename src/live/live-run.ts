import type { LiveCar } from './live-car.ts';
import type { LiveZone } from './live-zone.ts';

/** Every step of a zone that was driven, in columns of one length; entry i belongs to step i. */
export interface LiveColumns {
  /** From the cue, which is the target's brake point at the approach speed: starts at minus the lead-in. */
  readonly timeS: Float64Array;
  /** From turn-in, negative before it. */
  readonly placeM: Float64Array;
  readonly speedMps: Float64Array;
  /** As the foot gave it, 0..1. */
  readonly level: Float64Array;
  /** At the steering wheel, left positive: the driver's, or the rail's without a wheel. */
  readonly steeringRad: Float64Array;
  /** ISO 8855; the mean of the step, so that its integral is the change of speed. */
  readonly accelXMps2: Float64Array;
  /** ISO 8855. */
  readonly accelYMps2: Float64Array;
  readonly frontUse: Float64Array;
  readonly rearUse: Float64Array;
}

/** A zone driven from a finished record: the same to the bit as when it was driven live. */
export interface LiveRun {
  readonly zone: LiveZone;
  readonly columns: LiveColumns;
  /** The car at the end, with all that happened. */
  readonly end: LiveCar;
}

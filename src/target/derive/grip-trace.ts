import type { DerivedTarget } from './derive-target.ts';

/** What was asked of the grip along the road; entry i of each column belongs to one place. */
export interface GripTrace {
  /** m from turn-in, ascending. */
  readonly placeM: Float64Array;
  /** ISO 8855: negative when slowing, positive to the left. */
  readonly accelXMps2: Float64Array;
  readonly accelYMps2: Float64Array;
  /** Grip asked for over grip there is, by axle. */
  readonly frontUse: Float64Array;
  readonly rearUse: Float64Array;
}

/** The target's, from the brake point to the slowest point. */
export function targetGripTrace({ zone: { points } }: DerivedTarget): GripTrace {
  return {
    placeM: Float64Array.from(points, ({ sM }) => sM),
    accelXMps2: Float64Array.from(points, ({ accelXMps2 }) => accelXMps2),
    accelYMps2: Float64Array.from(points, ({ accelYMps2 }) => accelYMps2),
    frontUse: Float64Array.from(points, ({ frontUse }) => frontUse),
    rearUse: Float64Array.from(points, ({ rearUse }) => rearUse),
  };
}

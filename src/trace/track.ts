/**
 * One recorded channel: a value holds from its own time until the next one (zero-order hold), as devices that
 * report only on change deliver it. Times ascend (equal times are allowed; the later value wins).
 */
export interface Track {
  /** Seconds; the origin is said by whoever holds the track. */
  readonly timeS: Float64Array;
  /** Same length as `timeS`; level 0..1 for pedals, degrees (left positive, ISO 8855) for steering. */
  readonly value: Float64Array;
}

/** A track without any sample: the role is not connected, or has not moved yet. */
export const EMPTY_TRACK: Track = { timeS: new Float64Array(0), value: new Float64Array(0) };

import type { RepRecord } from '../../src/trace/rep-record.ts';

/** A rep of which only the brake was recorded, without a gap. It ends with the last sample, unless said. */
export function brakeAlone(
  timeS: Float64Array,
  value: Float64Array,
  endS: number = timeS.at(-1)!,
): RepRecord {
  return {
    brake: { timeS, value },
    throttle: null,
    clutch: null,
    steering: null,
    buttons: [],
    gaps: [],
    brakeStepLevel: 0,
    endS,
  };
}

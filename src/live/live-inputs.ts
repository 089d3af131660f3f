import {
  QUANTA_PER_BRAKE_LEVEL,
  QUANTA_PER_DEGREE,
  QUANTA_PER_LEVEL,
  TICKS_PER_S,
} from '../trace/quanta.ts';
import { onGrid } from '../trace/quantise-record.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { ButtonEvent, RigBatch } from '../trace/rig-batch.ts';
import { EMPTY_TRACK, type Track } from '../trace/track.ts';

/** A press of a paddle. */
interface ShiftPress {
  readonly timeS: number;
  /** +1 up, -1 down. */
  readonly by: 1 | -1;
}

/** What foot and hands did, on the grid on which a record is kept. Times are seconds from the cue. */
export interface LiveInputs {
  readonly brake: Track;
  readonly throttle: Track;
  readonly clutch: Track;
  /** Degrees at the wheel, left positive. */
  readonly steering: Track;
  readonly shifts: readonly ShiftPress[];
}

export const NO_INPUTS: LiveInputs = {
  brake: EMPTY_TRACK,
  throttle: EMPTY_TRACK,
  clutch: EMPTY_TRACK,
  steering: EMPTY_TRACK,
  shifts: [],
};

/**
 * The samples of one batch of the rig as the live car takes them: times first counted from the cue, then everything
 * put on the record's grid, as the record of the rep will be.
 */
export function liveInputs(batch: RigBatch, cueS: number): LiveInputs {
  return {
    brake: onRecordGrid(batch.brake, cueS, QUANTA_PER_BRAKE_LEVEL),
    throttle: onRecordGrid(batch.throttle, cueS, QUANTA_PER_LEVEL),
    clutch: onRecordGrid(batch.clutch, cueS, QUANTA_PER_LEVEL),
    steering: onRecordGrid(batch.steering, cueS, QUANTA_PER_DEGREE),
    shifts: shiftsOf(batch.buttons, cueS),
  };
}

/** The same of a whole record, quantised or not. */
export function inputsOfRecord(record: RepRecord): LiveInputs {
  return {
    brake: onRecordGrid(record.brake, 0, QUANTA_PER_BRAKE_LEVEL),
    throttle: onRecordGrid(record.throttle ?? EMPTY_TRACK, 0, QUANTA_PER_LEVEL),
    clutch: onRecordGrid(record.clutch ?? EMPTY_TRACK, 0, QUANTA_PER_LEVEL),
    steering: onRecordGrid(record.steering ?? EMPTY_TRACK, 0, QUANTA_PER_DEGREE),
    shifts: shiftsOf(record.buttons, 0),
  };
}

function onRecordGrid({ timeS, value }: Track, cueS: number, perUnit: number): Track {
  return {
    timeS: timeS.map((t) => onGrid(t - cueS, TICKS_PER_S)),
    value: value.map((v) => onGrid(v, perUnit)),
  };
}

function shiftsOf(buttons: readonly ButtonEvent[], cueS: number): ShiftPress[] {
  return buttons.flatMap(({ action, pressed, timeS }) =>
    pressed && (action === 'downshift' || action === 'upshift')
      ? [{ timeS: onGrid(timeS - cueS, TICKS_PER_S), by: action === 'upshift' ? 1 : -1 }]
      : [],
  );
}

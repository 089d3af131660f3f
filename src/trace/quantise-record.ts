import {
  QUANTA_PER_BRAKE_LEVEL,
  QUANTA_PER_DEGREE,
  QUANTA_PER_LEVEL,
  TICKS_PER_S,
  toQuanta,
} from './quanta.ts';
import type { RepRecord } from './rep-record.ts';
import type { Track } from './track.ts';

/**
 * The record as the history keeps it: times on 0.1 ms, the brake on 2^-16, the other pedals
 * on 2^-14, steering on 1/64 degree. Score this one,
 * and the score is that of the stored rep. Order is kept; a second pass changes nothing. The input is not changed.
 *
 * @throws RangeError for a value that is not finite or times that go back.
 */
export function quantiseRecord(record: RepRecord): RepRecord {
  return {
    brake: quantiseTrack(record.brake, QUANTA_PER_BRAKE_LEVEL),
    throttle: record.throttle && quantiseTrack(record.throttle, QUANTA_PER_LEVEL),
    clutch: record.clutch && quantiseTrack(record.clutch, QUANTA_PER_LEVEL),
    steering: record.steering && quantiseTrack(record.steering, QUANTA_PER_DEGREE),
    buttons: record.buttons.map((event) => ({ ...event, timeS: onGrid(event.timeS, TICKS_PER_S) })),
    gaps: record.gaps.map(({ fromS, toS }) => ({
      fromS: onGrid(fromS, TICKS_PER_S),
      toS: onGrid(toS, TICKS_PER_S),
    })),
    brakeStepLevel: record.brakeStepLevel,
    endS: onGrid(record.endS, TICKS_PER_S),
  };
}

function quantiseTrack(track: Track, perUnit: number): Track {
  const timeS = track.timeS.map((time) => onGrid(time, TICKS_PER_S));
  if (timeS.some((time, i) => i > 0 && time < timeS[i - 1]!))
    throw new RangeError('the times of a track go back');
  return { timeS, value: track.value.map((value) => onGrid(value, perUnit)) };
}

/** The value on a grid of `perUnit` steps to the unit. @throws RangeError as `toQuanta` */
export function onGrid(value: number, perUnit: number): number {
  return toQuanta(value, perUnit) / perUnit;
}

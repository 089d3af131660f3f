import { columnOf } from '../column-of.ts';
import type { RepRecord } from '../rep-record.ts';
import type { Track } from '../track.ts';
import type { BrakeRole, LoggedZone } from './logged-zone.ts';

/** Points of the score's grid. */
const STEP_S = 0.001;

/**
 * A logged zone as the record of a rep; time 0 is where the brake goes on. A logger samples signals that move between
 * its rows, so they are joined by straight lines on a grid of 1 ms, where a value of a rig holds until the next one.
 * Steering that is positive to the right is turned over; a null sign leaves it out.
 *
 * @param fullScale of the brake in its kept unit (level, Pa, N): level 1; beyond it the level stays 1
 */
export function zoneRecord(
  zone: LoggedZone,
  brake: BrakeRole,
  fullScale: number,
  steeringPositive: 'left' | 'right' | null,
): RepRecord {
  const { samples } = zone;
  const timeS = samples.get('time')!;
  const pressed = samples.get(brake)!;
  const steering = steeringPositive === null ? undefined : samples.get('steering');
  const throttle = samples.get('throttle');
  return {
    brake: joinedTrack(
      timeS,
      pressed.map((value) => level(value / fullScale)),
    ),
    throttle: throttle === undefined ? null : joinedTrack(timeS, throttle.map(level)),
    clutch: null,
    steering:
      steering === undefined
        ? null
        : joinedTrack(
            timeS,
            steering.map((deg) => (steeringPositive === 'left' ? deg : -deg)),
          ),
    buttons: [],
    gaps: zone.gaps,
    brakeStepLevel: smallestStep(pressed) / fullScale,
    endS: timeS[timeS.length - 1]!,
  };
}

const level = (value: number): number => Math.min(1, Math.max(0, value));

function joinedTrack(timeS: Float64Array, value: Float64Array): Track {
  const known = value.findIndex((one) => !Number.isNaN(one));
  if (known < 0) return { timeS: new Float64Array(0), value: new Float64Array(0) };
  const startS = timeS[known]!;
  const count = Math.floor((timeS[timeS.length - 1]! - startS) / STEP_S + 1e-6) + 1;
  const grid = columnOf(count, (i) => startS + i * STEP_S);
  let next = known;
  const joined = grid.map((at) => {
    while (next + 2 < timeS.length && timeS[next + 1]! <= at) next++;
    return between(timeS, value, Math.min(next, timeS.length - 2), at);
  });
  return { timeS: grid, value: joined };
}

function between(timeS: Float64Array, value: Float64Array, i: number, at: number): number {
  const spanS = timeS[i + 1]! - timeS[i]!;
  const share = spanS > 0 ? Math.min(1, Math.max(0, (at - timeS[i]!) / spanS)) : 1;
  return value[i]! + share * (value[i + 1]! - value[i]!);
}

/** The resolution of the sensor, as far as the record shows it: the smallest step between neighbours, 0 for none. */
function smallestStep(values: Float64Array): number {
  let step = Number.POSITIVE_INFINITY;
  for (let i = 1; i < values.length; i++) {
    const size = Math.abs(values[i]! - values[i - 1]!);
    if (size > 0) step = Math.min(step, size);
  }
  return Number.isFinite(step) ? step : 0;
}

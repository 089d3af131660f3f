import { keyNumbers } from './key-numbers.ts';
import { overTime } from './over-time.ts';
import { rounded } from './rounded.ts';
import type { Target, TargetMarks } from './target.ts';
import { travelOf } from './travel.ts';

const STEP_S = 0.01;

/** A target as one JSON object: the curve every 10 ms from the start of the rise, and what is named on it. */
export function targetJson(target: Target): Record<string, unknown> {
  const timed = overTime(target);
  const times = timeGrid(timed);
  const numbers = keyNumbers(target);
  const { fullScale } = target;
  return {
    id: target.id,
    version: target.version,
    name: target.name,
    corner_type: target.cornerType,
    advice: target.advice,
    learned_from: target.learnedFrom,
    domain: target.domain,
    time_s: times,
    ...distanceColumns(target, times),
    level: times.map((timeS) => rounded(timed.level.at(timeS))),
    corridor_level: times.map((timeS) => rounded(timed.corridorAt(timeS))),
    steering_deg: timed.steering && times.map((timeS) => rounded(timed.steering!.at(timeS))),
    marks_s: marksJson(timed.marks),
    marks_m: target.domain === 'distance' ? marksJson(target.marks) : null,
    gears: timed.gears.map(({ at, gear }) => ({ time_s: rounded(at), gear })),
    peak_level: target.peakLevel,
    rise_s: rounded(numbers.riseS),
    release_s: rounded(numbers.releaseS),
    mean_release_level_per_s: rounded(numbers.meanReleaseRate),
    steepest_release_level_per_s: rounded(numbers.steepestReleaseRate),
    steering_overlap_share: nullable(numbers.overlap),
    peak_deceleration_mps2: nullable(numbers.peakDecelerationMps2),
    full_scale: {
      pedal_force_n: nullable(fullScale.pedalForceN),
      pressure_bar: nullable(fullScale.pressureBar),
    },
  };
}

/** To the later of brake off and apex. */
function timeGrid({ marks }: Target): number[] {
  const end = Math.max(marks.brakeOff, marks.apex ?? 0);
  return Array.from({ length: Math.ceil(end / STEP_S) + 1 }, (_, i) => rounded(i * STEP_S));
}

function distanceColumns(target: Target, times: readonly number[]): Record<string, unknown> {
  if (target.domain === 'time' || target.speeds === null)
    return { distance_m: null, speed_mps: null };
  const travel = travelOf(target.level, target.speeds);
  const distances = times.map((timeS) => travel.distanceAt(timeS));
  return {
    distance_m: distances.map(rounded),
    speed_mps: distances.map((distanceM) => rounded(travel.speedAt(distanceM))),
  };
}

function marksJson(marks: TargetMarks): Record<string, number | null> {
  return {
    rise: rounded(marks.rise),
    peak: rounded(marks.peak),
    start_of_release: rounded(marks.startOfRelease),
    turn_in: nullable(marks.turnIn),
    apex: nullable(marks.apex),
    final_release: rounded(marks.finalRelease),
    brake_off: rounded(marks.brakeOff),
  };
}

function nullable(value: number | null): number | null {
  return value === null ? null : rounded(value);
}

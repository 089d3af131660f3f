import { STEERING_TOLERANCE_DEG } from './steering-along.ts';
import { tabulate } from './tabulate.ts';
import type { Curve, Target, TargetMarks, TargetSpeeds } from './target.ts';
import { type Travel, travelOf } from './travel.ts';

/**
 * The target against seconds after the start of the rise, which is what a drill without a car can show. A target
 * over time is returned as it is.
 *
 * Assumption: deceleration is proportional to the level and nothing else slows the car (see `travelOf`). It keeps
 * id and version, because both say the same curve.
 */
export function overTime(target: Target): Target {
  if (target.domain === 'time' || target.speeds === null) return target;
  const known = timed.get(target) ?? timedOf(target, target.speeds);
  timed.set(target, known);
  return known;
}

/** Screens, numbers and cautions all ask for the same target, which never changes. */
const timed = new WeakMap<Target, Target>();

function timedOf(target: Target, speeds: TargetSpeeds): Target {
  const travel = travelOf(target.level, speeds);
  const level = curveOverTime(target.level, travel);
  return {
    ...target,
    domain: 'time',
    level,
    steering: target.steering && curveOverTime(target.steering, travel, STEERING_TOLERANCE_DEG),
    gears: target.gears.map(({ at, gear }) => ({ at: travel.timeAt(at), gear })),
    marks: marksOverTime(target.marks, travel),
    corridorAt: (timeS) => target.corridorAt(travel.distanceAt(timeS)),
  };
}

function curveOverTime(curve: Curve, travel: Travel, tolerance?: number): Curve {
  return tabulate(
    (timeS) => curve.at(travel.distanceAt(timeS)),
    travel.timeAt(curve.end),
    travel.timeAt(curve.start),
    tolerance,
  );
}

function marksOverTime(marks: TargetMarks, { timeAt }: Travel): TargetMarks {
  return {
    rise: timeAt(marks.rise),
    peak: timeAt(marks.peak),
    startOfRelease: timeAt(marks.startOfRelease),
    turnIn: marks.turnIn === null ? null : timeAt(marks.turnIn),
    apex: marks.apex === null ? null : timeAt(marks.apex),
    finalRelease: timeAt(marks.finalRelease),
    brakeOff: timeAt(marks.brakeOff),
  };
}

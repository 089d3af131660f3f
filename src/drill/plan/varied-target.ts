import { fingerprint } from '../../profile/fingerprint.ts';
import type { Curve, Target, TargetMarks } from '../../target/target.ts';
import type { Variation } from './variation.ts';

/**
 * A target made lighter or heavier as a whole, and slower or quicker from the start of release on. Practising around a
 * force can serve it better than practising only the force itself (Shea and Kohl, RQES 61:169, 1990; others found no
 * difference: King and Newell, Hum. Mov. Sci. 34:28, 2014).
 *
 * It has an id of its own and a version for each variation, so that its reps never enter the statistics of the plain
 * target, and compare with each other only where the variation is the same. The corridor's share follows the level; its
 * floor stays. A factor that would take the peak beyond full scale takes it there.
 *
 * @param target over time
 * @throws RangeError for a target that is not over time
 */
export function variedTarget(target: Target, { levelFactor, releaseFactor }: Variation): Target {
  if (target.domain !== 'time') throw new RangeError(`${target.id} is not over time`);
  const factor = Math.min(levelFactor, 1 / target.peakLevel);
  const time = stretchedAfter(target.marks.startOfRelease, releaseFactor);
  const floor = target.corridorAt(target.level.end + 1);
  return {
    ...target,
    id: variedId(target.id),
    version: fingerprint(JSON.stringify([1, target.version, factor, releaseFactor])),
    name: `${target.name}, varied`,
    level: scaled(warped(target.level, time), factor),
    steering: target.steering && warped(target.steering, time),
    gears: target.gears.map(({ at, gear }) => ({ at: time.to(at), gear })),
    marks: warpedMarks(target.marks, time),
    peakLevel: factor * target.peakLevel,
    corridorAt: (timeS) => Math.max(floor, factor * target.corridorAt(time.from(timeS))),
  };
}

/** Under which id the history keeps varied reps; no file's id has a slash. */
export function variedId(targetId: string): string {
  return `${targetId}${VARIED}`;
}

/** The id of the target that a rep was driven on, plain or varied. */
export function plainId(targetId: string): string {
  return isVaried(targetId) ? targetId.slice(0, -VARIED.length) : targetId;
}

/** Whether reps kept under this id were driven on targets that a plan varied. */
export function isVaried(targetId: string): boolean {
  return targetId.endsWith(VARIED);
}

const VARIED = '/varied';

/** A change of the clock and its inverse, both of seconds after the start of the rise. */
interface Stretch {
  to(timeS: number): number;
  from(timeS: number): number;
}

function stretchedAfter(startS: number, factor: number): Stretch {
  return {
    to: (timeS) => (timeS <= startS ? timeS : startS + factor * (timeS - startS)),
    from: (timeS) => (timeS <= startS ? timeS : startS + (timeS - startS) / factor),
  };
}

function warped(curve: Curve, time: Stretch): Curve {
  return {
    start: time.to(curve.start),
    end: time.to(curve.end),
    at: (timeS) => curve.at(time.from(timeS)),
  };
}

function scaled(curve: Curve, factor: number): Curve {
  return { ...curve, at: (timeS) => factor * curve.at(timeS) };
}

function warpedMarks(marks: TargetMarks, { to }: Stretch): TargetMarks {
  return {
    rise: to(marks.rise),
    peak: to(marks.peak),
    startOfRelease: to(marks.startOfRelease),
    turnIn: marks.turnIn === null ? null : to(marks.turnIn),
    apex: marks.apex === null ? null : to(marks.apex),
    finalRelease: to(marks.finalRelease),
    brakeOff: to(marks.brakeOff),
  };
}

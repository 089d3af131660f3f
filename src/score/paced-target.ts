import type { PacedStretch } from '../target/paced-stretch.ts';
import type { Target, TargetMarks } from '../target/target.ts';
import { advancePace, PACE_HZ, startPace } from '../target/wheel-pace.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { EMPTY_TRACK, type Track } from '../trace/track.ts';

/** The place on the target over seconds since the target's zero, both ways. Before zero they are the same. */
interface PacedClock {
  placeAt(timeS: number): number;
  /** When the place is first reached. */
  timeOf(placeS: number): number;
  /** As far as the wheel went in. */
  readonly reachedDeg: number;
}

/**
 * How the driver's own wheel took a record along a target; behind the end of the record the clock goes on.
 *
 * @param originS record time of the target's zero
 */
export function pacedClock(
  { steering, endS }: RepRecord,
  stretch: PacedStretch,
  originS: number,
): PacedClock {
  const places = [0];
  const wheel = steering ?? EMPTY_TRACK;
  const before = heldAt(wheel, originS);
  const end = advancePace(startPace(before), stretch, wheel, originS, endS, (placeS) =>
    places.push(placeS),
  );
  const lastStep = places.length - 1;
  const lastS = lastStep / PACE_HZ;
  return {
    reachedDeg: end.reachedDeg,
    placeAt: (timeS) => {
      if (timeS <= 0) return timeS;
      if (timeS >= lastS) return places[lastStep]! + timeS - lastS;
      const step = Math.floor(timeS * PACE_HZ);
      return places[step]! + (timeS * PACE_HZ - step) * (places[step + 1]! - places[step]!);
    },
    timeOf: (placeS) => {
      if (placeS <= 0) return placeS;
      if (placeS > places[lastStep]!) return lastS + placeS - places[lastStep]!;
      return firstAtLeast(places, placeS) / PACE_HZ;
    },
  };
}

function heldAt({ timeS, value }: Track, atS: number): number | null {
  let held: number | null = null;
  for (let i = 0; i < timeS.length && timeS[i]! <= atS; i++) held = value[i]!;
  return held;
}

function firstAtLeast(places: readonly number[], placeS: number): number {
  let [low, high] = [0, places.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! >= placeS) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The target as the driver's own wheel asked for it: what a paced rep is scored on. */
export function pacedTarget(target: Target, { placeAt, timeOf }: PacedClock): Target {
  const mapped = (curve: Target['level']): Target['level'] => ({
    start: timeOf(curve.start),
    end: timeOf(curve.end),
    at: (timeS) => curve.at(placeAt(timeS)),
  });
  return {
    ...target,
    level: mapped(target.level),
    steering: target.steering && mapped(target.steering),
    gears: target.gears.map(({ at, gear }) => ({ at: timeOf(at), gear })),
    marks: mappedMarks(target.marks, timeOf),
    corridorAt: (timeS) => target.corridorAt(placeAt(timeS)),
  };
}

function mappedMarks(marks: TargetMarks, timeOf: (placeS: number) => number): TargetMarks {
  const known = (mark: number | null): number | null => (mark === null ? null : timeOf(mark));
  return {
    rise: timeOf(marks.rise),
    peak: timeOf(marks.peak),
    startOfRelease: timeOf(marks.startOfRelease),
    turnIn: known(marks.turnIn),
    apex: known(marks.apex),
    finalRelease: timeOf(marks.finalRelease),
    brakeOff: timeOf(marks.brakeOff),
  };
}

import type { DriveModel } from '../../corner/drive-model.ts';
import type { ProfilePoint } from '../../corner/speed-profile.ts';
import { travelTimeS } from '../../corner/travel-time.ts';
import { type GearSchedule, gearAt } from './zone-model.ts';

/**
 * A profile no car has to be catapulted along: where the corner lets the speed rise again, as between two apexes, it
 * rises no faster than full throttle in the gear of the place pulls. Everything else stays as it is. Left out: the time
 * a driver takes from brake to throttle and back.
 *
 * @param profile in driving order
 */
export function underThrottle(
  profile: readonly ProfilePoint[],
  accelerationMps2: DriveModel['accelerationMps2'],
  schedule: GearSchedule,
): ProfilePoint[] {
  const driven: ProfilePoint[] = [];
  for (const point of profile) {
    const last = driven[driven.length - 1];
    const rises = last !== undefined && point.speedMps > last.speedMps;
    driven.push(rises ? lower(point, reached(accelerationMps2, schedule, last, point.sM)) : point);
  }
  return withTimes(driven);
}

/** What full throttle makes of a step from the point before. */
function reached(
  accelerationMps2: DriveModel['accelerationMps2'],
  schedule: GearSchedule,
  { sM, speedMps }: ProfilePoint,
  toM: number,
): ProfilePoint {
  const gear = gearAt(schedule, sM);
  const slope = (at: number, w: number): number => 2 * accelerationMps2(at, w, gear);
  const [w, h] = [speedMps ** 2, toM - sM];
  const k1 = slope(sM, w);
  const k2 = slope(sM + h / 2, w + (h / 2) * k1);
  const k3 = slope(sM + h / 2, w + (h / 2) * k2);
  const k4 = slope(toM, w + h * k3);
  const squared = w + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  return {
    sM: toM,
    speedMps: Math.sqrt(squared),
    decelerationMps2: -accelerationMps2(toM, squared, gear),
    brakeForceN: 0,
    limiter: 'throttle',
    toSlowestS: 0,
  };
}

function lower(one: ProfilePoint, other: ProfilePoint): ProfilePoint {
  return other.speedMps < one.speedMps ? other : one;
}

function withTimes(points: readonly ProfilePoint[]): ProfilePoint[] {
  const timed = [...points];
  for (let i = points.length - 2; i >= 0; i--) {
    const [here, next] = [timed[i] as ProfilePoint, timed[i + 1] as ProfilePoint];
    timed[i] = {
      ...here,
      toSlowestS: next.toSlowestS + travelTimeS(next.sM - here.sM, here, next),
    };
  }
  return timed;
}

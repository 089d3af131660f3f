import type { Corner } from '../../corner/corner.ts';
import type { ProfilePoint } from '../../corner/speed-profile.ts';
import type { ApplicationPoint } from './application.ts';
import type { LateLoad } from './late-load.ts';
import type { SolvedProfile } from './solve-profile.ts';
import { type GearSchedule, gearAt, type ZoneSetting } from './zone-model.ts';
import { type Motion, type ZonePoint, zonePointOf } from './zone-point.ts';

/** The backward pass with the application in front of it. */
export interface AppliedZone extends SolvedProfile {
  readonly application: readonly ApplicationPoint[];
  readonly brakePointM: number;
  readonly tooFastMps: number;
}

/** What foot, hands and car do from place to place: the application, then the profile from where it has caught up. */
export function zonePoints(
  setting: ZoneSetting,
  zone: AppliedZone,
  schedule: GearSchedule,
  lateLoadN: LateLoad,
): ZonePoint[] {
  const caughtUp = lastOf(zone.application);
  const start = caughtUp.timeS + timeToSlowest(zone, caughtUp.sM);
  const motion = (
    { sM, speedMps, decelerationMps2, brakeForceN, limiter }: ApplicationPoint | ProfilePoint,
    timeS: number,
    lateN: number,
  ): Motion => ({
    sM,
    distanceM: zone.slowestM - sM,
    timeS,
    speedMps,
    decelerationMps2,
    brakeForceN,
    gear: gearAt(schedule, sM),
    lateLoadN: lateN,
    limiter,
  });
  const rise = zone.application.map((point) => motion(point, point.timeS, 0));
  const rest = zone.profile
    .filter(({ sM }) => sM > caughtUp.sM)
    .map((point) =>
      motion(point, start - point.toSlowestS, isRolling(point) ? 0 : lateLoadN(point.sM)),
    );
  return [...rise, ...rest].map(zonePointOf(setting));
}

/** Off the brake, at the corner's own limit or under throttle, what is left of late load dies out. */
function isRolling({ limiter, brakeForceN }: ProfilePoint): boolean {
  return limiter === 'throttle' || (limiter === 'corner' && brakeForceN === 0);
}

/** Time from a place on the approach to the slowest point, the approach at constant speed, s. */
export function durationFrom(
  zone: AppliedZone,
  fromM: number,
  { approachSpeedMps }: Corner,
): number {
  const caughtUp = lastOf(zone.application);
  return (
    (zone.brakePointM - fromM) / approachSpeedMps +
    caughtUp.timeS +
    timeToSlowest(zone, caughtUp.sM)
  );
}

/** An application has at least its first point. */
function lastOf(application: readonly ApplicationPoint[]): ApplicationPoint {
  return application[application.length - 1] as ApplicationPoint;
}

/** Time along the profile from a place to the slowest point, s. */
function timeToSlowest({ profile, curve }: AppliedZone, fromM: number): number {
  const next = profile.find(({ sM }) => sM >= fromM);
  if (next === undefined) return 0;
  return next.toSlowestS + (2 * (next.sM - fromM)) / (next.speedMps + curve.speedMps(fromM));
}

import { frontBrakeShare } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import { criticalRateG } from '../../car/critical-rate.ts';
import { straightLimit } from '../../car/straight-limit.ts';
import { apexM } from '../../corner/apex.ts';
import { brakeLimit } from '../../corner/axle-limit.ts';
import { axleUse } from '../../corner/axle-use.ts';
import type { Corner, CornerBump } from '../../corner/corner.ts';
import { loadsMeanwhile, type Road } from '../../corner/two-axle.ts';
import { wheelForces } from '../../corner/wheel-forces.ts';
import { easeShare } from './bump-easing.ts';
import type { SolvedZone } from './derive-zone.ts';
import { engineBrakingInGearN, type ZoneSetting, zoneSetting } from './zone-model.ts';
import type { ZonePoint } from './zone-point.ts';

/** The points of a zone a driver is told. */
export interface ZoneKeyPoints {
  readonly brakePoint: ZonePoint;
  readonly peak: ZonePoint;
  /** Last place where the brakes still give what the straight would carry. */
  readonly startOfRelease: ZonePoint;
  readonly turnIn: ZonePoint;
  readonly apex: ZonePoint;
  readonly slowest: ZonePoint;
}

/** Share of the straight-line limit below which the release has begun: the corridor is 5 % wide. */
const STILL_STRAIGHT = 0.97;
const SAME_LEVEL = 1e-9;
/** From here on the pedal gives no more. */
export const FULL_SCALE: number = 1 - 1e-6;

export function keyPointsOf(car: Car, corner: Corner, zone: SolvedZone): ZoneKeyPoints {
  const { points } = zone;
  const first = points[0] as ZonePoint;
  const last = points[points.length - 1] as ZonePoint;
  // The first of a plateau.
  const peak = points.reduce(
    (best, point) => (point.level > best.level + SAME_LEVEL ? point : best),
    first,
  );
  const afterPeak = points.slice(points.indexOf(peak));
  const limitN = straightBrakingN(car, corner);
  const straight = afterPeak.findLast(
    (point) => point.level >= FULL_SCALE || point.brakeForceN >= STILL_STRAIGHT * limitN(point),
  );
  return {
    brakePoint: first,
    peak,
    startOfRelease: straight ?? peak,
    turnIn: nearest(points, 0),
    apex: nearest(points, apexM(corner.path)),
    slowest: last,
  };
}

/** What the brakes could give at a point's speed on the straight, N. */
function straightBrakingN(car: Car, corner: Corner): (point: ZonePoint) => number {
  const { axles, road } = zoneSetting(car, corner);
  const straight: Road = { ...road, curvatureAt: () => 0, bankAt: () => 0 };
  const front = brakeLimit(axles, 'front');
  const rear = brakeLimit(axles, 'rear');
  return ({ sM, speedMps, gear, lateLoadN }) => {
    const rest = wheelForces(axles, straight, sM, speedMps ** 2);
    const { frontLoadN, rearLoadN } = loadsMeanwhile(rest, lateLoadN);
    const engineN = engineBrakingInGearN(car, gear, speedMps);
    return Math.min(front(frontLoadN, 0, engineN), rear(rearLoadN, 0, engineN));
  };
}

function nearest(points: readonly ZonePoint[], sM: number): ZonePoint {
  return points.reduce((best, point) =>
    Math.abs(point.sM - sM) < Math.abs(best.sM - sM) ? point : best,
  );
}

/** Which axle locks first on the straight, and by how much. */
export interface LockOrder {
  readonly axle: 'front' | 'rear';
  /** Braking rate of the other axle's lock minus the first one's, g; null where the other never locks. */
  readonly marginG: number | null;
  /** Braking rate above which the order turns, g, without air forces, push-out and valve. */
  readonly turnsAtG: number;
}

export function lockOrder(car: Car, speedMps: number): LockOrder {
  const { locksFirst, marginG } = straightLimit(car, speedMps);
  const turnsAtG = criticalRateG(car.chassis, frontBrakeShare(car.brakes));
  return { axle: locksFirst, marginG, turnsAtG };
}

/** How a bump finds the axles on the target. */
export interface BumpMargin {
  readonly bump: CornerBump;
  /** Grip the rear axle uses at the deepest loss of load: above 1 it lets go. */
  readonly rearUse: number;
  /** Share of the brake force to give up over it so that the rear axle stays and no wheel locks; 0 where none. */
  readonly ease: number;
}

export function bumpMargins(car: Car, corner: Corner, zone: SolvedZone): BumpMargin[] {
  const setting = zoneSetting(car, corner);
  return corner.bumps
    .filter(({ atM }) => atM >= zone.brakePointM && atM <= zone.slowestM)
    .map((bump) => {
      const point = nearest(zone.points, bump.atM + bump.lengthM / 2);
      const use = (share: number): number => rearUseOver(setting, point, bump.depth, share);
      const engineN = engineBrakingInGearN(car, point.gear, point.speedMps);
      const noLock = easeShare(setting, bump, { ...point, engineN });
      return { bump, rearUse: use(1), ease: Math.max(easeFor(use), noLock) };
    });
}

function rearUseOver(
  { car, axles, road }: ZoneSetting,
  point: ZonePoint,
  unloaded: number,
  share: number,
): number {
  return axleUse(axles, road, {
    sM: point.sM,
    speedMps: point.speedMps,
    brakeForceN: point.brakeForceN * share,
    engineN: engineBrakingInGearN(car, point.gear, point.speedMps),
    unloaded,
  }).rear;
}

/** Smallest share to give up for a use of at most 1, in hundredths; 1 where even that does not do. */
function easeFor(use: (share: number) => number): number {
  for (let ease = 0; ease < 100; ease++) if (use(1 - ease / 100) <= 1) return ease / 100;
  return 1;
}

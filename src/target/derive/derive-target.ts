import type { Car } from '../../car/car.ts';
import type { Corner } from '../../corner/corner.ts';
import { Problem } from '../../problem.ts';
import { kmhFromMetresPerSecond } from '../../units.ts';
import { type SolvedZone, solveZone } from './derive-zone.ts';
import {
  type BumpMargin,
  bumpMargins,
  keyPointsOf,
  type LockOrder,
  lockOrder,
  type ZoneKeyPoints,
} from './zone-key-points.ts';
import type { ModelName } from './zone-model.ts';
import type { ZonePoint } from './zone-point.ts';

/** A solved zone and what is said about it. */
export interface DerivedTarget {
  readonly car: Car;
  readonly corner: Corner;
  readonly zone: SolvedZone;
  readonly keys: ZoneKeyPoints;
  /** Where the push of the hit ends and the foot waits for load; null where one push reaches the peak. */
  readonly pushEnd: ZonePoint | null;
  /** On the straight at the approach speed. */
  readonly lock: LockOrder;
  readonly bumps: readonly BumpMargin[];
  readonly straightBleed: StraightBleed;
  /** Most that the level rises again after it has fallen: a target file cannot say it and runs through the middle. */
  readonly risesAgainLevel: number;
}

/** Pressure that has to leave before the wheel turns, because downforce and engine braking change with speed. */
interface StraightBleed {
  readonly from: ZonePoint;
  /** Turn-in, or the peak where that comes later. */
  readonly to: ZonePoint;
  /** Front line pressure, Pa; 0 where it need not fall. */
  readonly pressurePa: number;
  /** The same as a level. */
  readonly level: number;
}

/**
 * Derives the target of a car in a corner.
 * @throws Problem where the corner needs no brake from that approach speed
 */
export function deriveTarget(
  car: Car,
  corner: Corner,
  model: ModelName = 'two-axle',
): DerivedTarget {
  const zone = solveZone(car, corner, model);
  refuseNoBraking(corner, zone);
  const keys = keyPointsOf(car, corner, zone);
  return {
    car,
    corner,
    zone,
    keys,
    pushEnd: pushEndOf(zone.points, keys.peak),
    lock: lockOrder(car, corner.approachSpeedMps),
    bumps: bumpMargins(car, corner, zone),
    straightBleed: straightBleedOf(keys),
    risesAgainLevel: risesAgain(zone.points.slice(zone.points.indexOf(keys.peak))),
  };
}

function pushEndOf(points: readonly ZonePoint[], peak: ZonePoint): ZonePoint | null {
  const waits = points.findIndex(({ limiter }) => limiter === 'load');
  return waits > 0 && waits <= points.indexOf(peak) ? (points[waits - 1] as ZonePoint) : null;
}

function straightBleedOf({ peak, turnIn }: ZoneKeyPoints): StraightBleed {
  const to = turnIn.sM > peak.sM ? turnIn : peak;
  return {
    from: peak,
    to,
    pressurePa: Math.max(0, peak.pressureFrontPa - to.pressureFrontPa),
    level: Math.max(0, peak.level - to.level),
  };
}

function risesAgain(points: readonly ZonePoint[]): number {
  let [least, rise] = [Number.POSITIVE_INFINITY, 0];
  for (const { level } of points) {
    least = Math.min(least, level);
    rise = Math.max(rise, level - least);
  }
  return rise;
}

function refuseNoBraking({ name, approachSpeedMps }: Corner, { points }: SolvedZone): void {
  const slowest = points[points.length - 1];
  const brakes = points.some(({ level }) => level > 0);
  if (brakes && slowest !== undefined && slowest.speedMps < approachSpeedMps) return;
  throw new Problem(
    `${name} needs no brake from ${kmhFromMetresPerSecond(approachSpeedMps).toFixed(0)} km/h in this car`,
    { next: 'Take a faster approach, a slower car, or a corner with less radius.' },
  );
}

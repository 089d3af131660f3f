import type { Car } from '../../car/car.ts';
import { accelerate, type DrivePoint, type Upshift } from '../../corner/accelerate.ts';
import { apexM } from '../../corner/apex.ts';
import type { Corner } from '../../corner/corner.ts';
import { DEFAULT_STEP_M } from '../../corner/speed-profile.ts';
import type { DerivedTarget } from './derive-target.ts';
import { exitDrive } from './exit-drive.ts';

/** A stretch of straight after the end of the path that is still counted, m. */
export const DEFAULT_EXIT_M = 200;

/** The time one way of driving a corner takes, in parts that add up to `totalS`. */
export interface DrivenParts {
  /** At the approach speed, from the start of the common stretch to the brake point. */
  readonly straightS: number;
  /** From the brake point to the slowest point. */
  readonly brakingS: number;
  /** From the slowest point to the end of the longer path. */
  readonly cornerExitS: number;
  /** The straight after that. */
  readonly exitStraightS: number;
  readonly totalS: number;
  /** Upshifts after the slowest point, and the part of the time above that passes without drive. */
  readonly upshifts: readonly Upshift[];
  readonly shiftingS: number;
  readonly exitSpeedMps: number;
}

/** Two ways of driving a corner over the same stretch of road. */
export interface TimeDifference {
  readonly one: DrivenParts;
  readonly other: DrivenParts;
  /** Length of the common stretch, m. */
  readonly lengthM: number;
  /** Its ends before and after the apex, m. */
  readonly beforeApexM: number;
  readonly afterApexM: number;
}

/**
 * What two gear plans or variants differ by, from the earlier of their brake points to the same place on the exit.
 * Places are taken by their distance from the apex, as on a corner sheet, so that a tighter line is not paid for being
 * shorter. Before its brake point each car keeps the approach speed of its variant.
 *
 * @param exitM straight after the end of the longer path, m
 */
export function timeDifference(
  one: DerivedTarget,
  other: DerivedTarget,
  exitM: number = DEFAULT_EXIT_M,
): TimeDifference {
  const both = [one, other];
  const beforeApexM = Math.max(
    ...both.map(({ corner, zone }) => apexM(corner.path) - zone.brakePointM),
  );
  const cornerEndM = Math.max(...both.map(({ corner: { path } }) => path.lengthM - apexM(path)));
  const stretch = { beforeApexM, cornerEndM, afterApexM: cornerEndM + exitM };
  return {
    one: partsOf(one, stretch),
    other: partsOf(other, stretch),
    lengthM: beforeApexM + stretch.afterApexM,
    beforeApexM,
    afterApexM: stretch.afterApexM,
  };
}

/** Places of the common stretch, m before and after the apex. */
interface Stretch {
  readonly beforeApexM: number;
  readonly cornerEndM: number;
  readonly afterApexM: number;
}

function partsOf({ car, corner, zone }: DerivedTarget, stretch: Stretch): DrivenParts {
  const apex = apexM(corner.path);
  const start = apex - stretch.beforeApexM;
  const cornerEndM = apex + stretch.cornerEndM;
  const { points, upshifts } = driveOut(car, corner, {
    fromM: zone.slowestM,
    fromMps: zone.points[zone.points.length - 1]?.speedMps ?? 0,
    cornerEndM,
    toM: apex + stretch.afterApexM,
  });
  const last = points[points.length - 1] as DrivePoint;
  const cornerExitS = timeAt(points, cornerEndM);
  const straightS = (zone.brakePointM - start) / corner.approachSpeedMps;
  return {
    straightS,
    brakingS: zone.durationS,
    cornerExitS,
    exitStraightS: last.timeS - cornerExitS,
    totalS: straightS + zone.durationS + last.timeS,
    upshifts,
    shiftingS: shiftingS(points),
    exitSpeedMps: last.speedMps,
  };
}

function driveOut(
  car: Car,
  corner: Corner,
  from: {
    readonly fromM: number;
    readonly fromMps: number;
    readonly cornerEndM: number;
    readonly toM: number;
  },
): ReturnType<typeof accelerate> {
  let at = 0;
  const ends = corner.path.segments.map(({ lengthM }) => (at += lengthM));
  return accelerate(exitDrive(car, corner, from.fromM, from.toM), {
    ...from,
    gear: corner.gears.slowest,
    jointsM: [...ends, from.cornerEndM],
    stepM: DEFAULT_STEP_M,
  });
}

/** Time at a place, s, between two points by their speeds. */
function timeAt(points: readonly DrivePoint[], sM: number): number {
  const next = points.findIndex((point) => point.sM >= sM);
  const [a, b] = [points[next - 1], points[next]];
  if (b === undefined) return points[points.length - 1]?.timeS ?? 0;
  if (a === undefined || b.sM === sM) return b.timeS;
  return a.timeS + ((b.timeS - a.timeS) * (sM - a.sM)) / (b.sM - a.sM);
}

/** Time without drive: all that passes between a point with an open clutch, or the start of a shift, and the next. */
function shiftingS(points: readonly DrivePoint[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as DrivePoint, points[i] as DrivePoint];
    if (a.gear === null || b.gear === null) sum += b.timeS - a.timeS;
  }
  return sum;
}

import type { Car } from '../../car/car.ts';
import type { Corner } from '../../corner/corner.ts';
import { slowestPointM } from '../../corner/slowest-point.ts';
import type { ProfilePoint } from '../../corner/speed-profile.ts';
import type { Downshift } from './downshifts.ts';
import { settleLoads } from './settle-loads.ts';
import type { ZoneProblem } from './solve-profile.ts';
import { type ModelName, zoneModel, zoneSetting } from './zone-model.ts';
import type { ZonePoint } from './zone-point.ts';
import { type AppliedZone, durationFrom, zonePoints } from './zone-points.ts';

/** A zone solved for one car, corner and variant: what the driver, the foot and the car do from place to place. */
export interface SolvedZone {
  readonly model: ModelName;
  /** In driving order from the brake point to the slowest point. */
  readonly points: readonly ZonePoint[];
  /** The backward pass at the limit, in driving order to the slowest point: it begins faster than the approach. */
  readonly profile: readonly ProfilePoint[];
  readonly brakePointM: number;
  readonly slowestM: number;
  readonly downshifts: readonly Downshift[];
  /** How much too fast the car is where even braking from the start of the zone does not do; 0 where it does. */
  readonly tooFastMps: number;
  /** How far the last round of loads and brakes still moved the zone, m, see `movedM`; 0 where they settled. */
  readonly unsettledM: number;
  readonly durationS: number;
  /** Time lost because a foot only eases, and not as fast as the grip would allow: the zone is solved once more for it. */
  footLossS(): number;
}

/**
 * Solves a braking zone: back from the slowest point at the limit of grip, the first application in front of it, and
 * the downshifts along the way. Everything the two-axle model leaves out (yaw inertia, transient tyre forces, kerbs,
 * tyre temperature) is left out here too.
 */
export function solveZone(car: Car, corner: Corner, model: ModelName = 'two-axle'): SolvedZone {
  const setting = zoneSetting(car, corner);
  const inOneGear = zoneModel(model, setting, [{ fromM: 0, gear: corner.gears.slowest }]);
  // What the corner carries does not depend on the gears, so neither does the slowest place.
  const cornerLimit = askedOnce(inOneGear.cornerLimit);
  const slowestM = slowestPointM(inOneGear, corner.path.lengthM);
  const problem: ZoneProblem = { ...setting, model, slowestM, cornerLimit };
  const { zone, schedule, downshifts, lateLoadN, unsettledM } = settleLoads(problem);
  return {
    model,
    points: zonePoints(setting, zone, schedule, lateLoadN),
    profile: zone.profile,
    brakePointM: zone.brakePointM,
    slowestM: zone.slowestM,
    downshifts,
    unsettledM,
    tooFastMps: zone.tooFastMps,
    durationS: durationFrom(zone, zone.brakePointM, corner),
    footLossS: () => footLossS(problem, zone),
  };
}

/** A function that remembers what it said of each place: every round asks at the same ones. */
function askedOnce(ofPlace: (sM: number) => number): (sM: number) => number {
  const known = new Map<number, number>();
  return (sM) => {
    const before = known.get(sM);
    if (before !== undefined) return before;
    const value = ofPlace(sM);
    known.set(sM, value);
    return value;
  };
}

/** Time the foot's slowness costs from the brake point on; 0 where it never limited. */
function footLossS(problem: ZoneProblem, zone: AppliedZone): number {
  if (!zone.profile.some(({ limiter }) => limiter === 'foot')) return 0;
  const { car, corner } = problem;
  const driver = { ...car.driver, releaseNps: Number.POSITIVE_INFINITY };
  const unhurried = settleLoads({ ...problem, car: { ...car, driver } }).zone;
  return (
    durationFrom(zone, zone.brakePointM, corner) - durationFrom(unhurried, zone.brakePointM, corner)
  );
}

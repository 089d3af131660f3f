import { frontBrakeShare } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { Corner } from '../../corner/corner.ts';
import { type ProfileCurve, profileCurve } from '../../corner/profile-curve.ts';
import { slowestPointM } from '../../corner/slowest-point.ts';
import { brakeToSlowest, DEFAULT_STEP_M, type ProfilePoint } from '../../corner/speed-profile.ts';
import { type ApplicationPoint, applyBrakes, findBrakePoint } from './application.ts';
import { type Downshift, planDownshifts, scheduleOf } from './downshifts.ts';
import {
  type GearSchedule,
  gearAt,
  type ModelName,
  roadOf,
  twoAxleCar,
  zoneModel,
} from './zone-model.ts';
import { type Motion, type ZonePoint, zonePoint } from './zone-point.ts';

/** A zone solved for one car, corner and variant: what the driver, the foot and the car do from place to place. */
export interface SolvedZone {
  readonly model: ModelName;
  /** In driving order from the brake point to the slowest point. */
  readonly points: readonly ZonePoint[];
  readonly brakePointM: number;
  readonly slowestM: number;
  readonly downshifts: readonly Downshift[];
  /** How much too fast the car is where even braking from the start of the zone does not do; 0 where it does. */
  readonly tooFastMps: number;
  readonly durationS: number;
  /** Time lost because a foot cannot release as fast as the grip would allow. */
  readonly footLossS: number;
}

/** Gears move the profile and the profile moves the gears: this many rounds settle them to centimetres. */
const GEAR_ROUNDS = 3;

/**
 * Solves a braking zone: back from the slowest point at the limit of grip, the first application in front of it, and
 * the downshifts along the way. Everything the two-axle model leaves out (yaw inertia, transient tyre forces, kerbs,
 * tyre temperature) is left out here too.
 */
export function solveZone(car: Car, corner: Corner, model: ModelName = 'two-axle'): SolvedZone {
  let schedule: GearSchedule = [{ fromM: Number.NEGATIVE_INFINITY, gear: corner.gears.approach }];
  let zone = solveInGears(car, corner, model, schedule, car.driver.releaseNps);
  for (let round = 0; round < GEAR_ROUNDS; round++) {
    schedule = scheduleOf(corner, planDownshifts({ car, corner, ...zone }));
    zone = solveInGears(car, corner, model, schedule, car.driver.releaseNps);
  }
  const unhurried = solveInGears(car, corner, model, schedule, Number.POSITIVE_INFINITY);
  return {
    model,
    points: pointsOf(car, corner, zone, schedule),
    brakePointM: zone.brakePointM,
    slowestM: zone.slowestM,
    downshifts: planDownshifts({ car, corner, ...zone }),
    tooFastMps: zone.tooFastMps,
    durationS: durationFrom(zone, zone.brakePointM, corner),
    footLossS:
      durationFrom(zone, zone.brakePointM, corner) -
      durationFrom(unhurried, zone.brakePointM, corner),
  };
}

/** A zone solved with the gears given. */
interface GearedZone {
  readonly model: BrakingModel;
  readonly profile: readonly ProfilePoint[];
  readonly curve: ProfileCurve;
  readonly application: readonly ApplicationPoint[];
  readonly brakePointM: number;
  readonly slowestM: number;
  readonly tooFastMps: number;
}

function solveInGears(
  car: Car,
  corner: Corner,
  name: ModelName,
  schedule: GearSchedule,
  footReleaseNps: number,
): GearedZone {
  const model = zoneModel(name, car, corner, schedule);
  const slowestM = slowestPointM(model, corner.path.lengthM);
  const profile = brakeToSlowest(model, {
    slowestM,
    fromM: -corner.approachM,
    jointsM: [...jointsOf(corner), ...schedule.slice(1).map(({ fromM }) => fromM)],
    stepM: DEFAULT_STEP_M,
    releaseNps: footReleaseNps * brakeForcePerPedalN(car),
  });
  const curve = profileCurve(profile);
  const limits = {
    approachSpeedMps: corner.approachSpeedMps,
    riseS: car.driver.riseS,
    pitch:
      name === 'two-axle'
        ? { car: twoAxleCar(car, corner.gripShare), road: roadOf(corner), hz: car.pitchHz }
        : null,
  };
  const { brakePointM, tooFastMps } = findBrakePoint(model, limits, curve);
  const application = applyBrakes(model, limits, brakePointM);
  return { model, profile, curve, application, brakePointM, slowestM, tooFastMps };
}

/** Places where the curvature or its slope jumps: turn-in and the ends of the segments. */
function jointsOf({ path }: Corner): number[] {
  let at = 0;
  return [0, ...path.segments.map(({ lengthM }) => (at += lengthM))];
}

/** Brake force of both axles per newton at the pedal. */
function brakeForcePerPedalN({ brakes }: Car): number {
  const { front } = brakes;
  const pressure =
    (brakes.balanceBarFront * brakes.pedalRatio * brakes.pedalEfficiency) /
    front.masterCylinderAreaM2;
  const force =
    (4 * front.padFriction * front.pistonAreaM2 * front.effectiveRadiusM * pressure) /
    front.wheelRadiusM;
  return force / frontBrakeShare(brakes);
}

function pointsOf(car: Car, corner: Corner, zone: GearedZone, schedule: GearSchedule): ZonePoint[] {
  const share = frontBrakeShare(car.brakes);
  const caughtUp = zone.application[zone.application.length - 1] as ApplicationPoint;
  const toSlowest = timeToSlowest(zone, caughtUp.sM);
  const start = caughtUp.timeS + toSlowest;
  const rise = zone.application.map(
    (point): Motion => ({
      ...point,
      distanceM: zone.slowestM - point.sM,
      gear: gearAt(schedule, point.sM),
      limiter: 'foot',
    }),
  );
  const rest = zone.profile
    .filter(({ sM }) => sM > caughtUp.sM)
    .map(
      (point): Motion => ({
        ...point,
        distanceM: zone.slowestM - point.sM,
        timeS: start - point.toSlowestS,
        gear: gearAt(schedule, point.sM),
      }),
    );
  return [...rise, ...rest].map((motion) => zonePoint(car, corner, share, motion));
}

/** Time along the profile from a place to the slowest point, s. */
function timeToSlowest({ profile, curve }: GearedZone, fromM: number): number {
  const next = profile.find(({ sM }) => sM >= fromM);
  if (next === undefined) return 0;
  return next.toSlowestS + (2 * (next.sM - fromM)) / (next.speedMps + curve.speedMps(fromM));
}

/** Time from a place on the approach to the slowest point, the approach at constant speed, s. */
function durationFrom(zone: GearedZone, fromM: number, { approachSpeedMps }: Corner): number {
  const caughtUp = zone.application[zone.application.length - 1] as ApplicationPoint;
  return (
    (zone.brakePointM - fromM) / approachSpeedMps +
    caughtUp.timeS +
    timeToSlowest(zone, caughtUp.sM)
  );
}

import { frontBrakeShare } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { Corner } from '../../corner/corner.ts';
import { type ProfileCurve, profileCurve } from '../../corner/profile-curve.ts';
import { slowestPointM } from '../../corner/slowest-point.ts';
import { brakeToSlowest, DEFAULT_STEP_M, type ProfilePoint } from '../../corner/speed-profile.ts';
import { type ApplicationPoint, findBrakePoint, type Pitch } from './application.ts';
import { type Downshift, planDownshifts, scheduleOf } from './downshifts.ts';
import { fullThrottle } from './exit-drive.ts';
import { underThrottle } from './under-throttle.ts';
import {
  engineBrakingOf,
  type GearSchedule,
  gearAt,
  type ModelName,
  type ZoneSetting,
  zoneModel,
  zoneSetting,
} from './zone-model.ts';
import { type Motion, type ZonePoint, zonePoint } from './zone-point.ts';

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
  readonly durationS: number;
  /** Time lost because a foot cannot release as fast as the grip would allow. */
  readonly footLossS: number;
}

/** Gears move the profile and the profile moves the gears: after this many rounds they have settled to centimetres. */
const MOST_GEAR_ROUNDS = 4;
const SETTLED_M = 0.05;
/** Step while gears settle, m: places come out to a centimetre. */
const ROUGH_STEP_M = 4;
/** The application begins before the limit has come down to the approach speed: this much of it is looked at. */
const SPARE_SPEED = 1.4;

/**
 * Solves a braking zone: back from the slowest point at the limit of grip, the first application in front of it, and
 * the downshifts along the way. Everything the two-axle model leaves out (yaw inertia, transient tyre forces, kerbs,
 * tyre temperature) is left out here too.
 */
export function solveZone(car: Car, corner: Corner, model: ModelName = 'two-axle'): SolvedZone {
  const setting = zoneSetting(car, corner);
  const inOneGear = zoneModel(model, car, corner, [{ fromM: 0, gear: corner.gears.slowest }]);
  // What the corner carries does not depend on the gears, so neither does this place.
  const slowestM = slowestPointM(inOneGear, corner.path.lengthM);
  const problem: ZoneProblem = { ...setting, model, slowestM };
  const { schedule, solved } = settleGears(problem);
  const zone = withApplication(problem, schedule, solved);
  return {
    model,
    points: pointsOf(setting, zone, schedule),
    profile: zone.profile,
    brakePointM: zone.brakePointM,
    slowestM: zone.slowestM,
    downshifts: planDownshifts({ ...setting, ...zone }),
    tooFastMps: zone.tooFastMps,
    durationS: durationFrom(zone, zone.brakePointM, corner),
    footLossS: footLossS(problem, schedule, zone),
  };
}

interface ZoneProblem extends ZoneSetting {
  readonly model: ModelName;
  readonly slowestM: number;
}

/** The backward pass with the gears given. */
interface SolvedProfile {
  readonly model: BrakingModel;
  readonly profile: readonly ProfilePoint[];
  readonly curve: ProfileCurve;
  readonly slowestM: number;
}

/** The pass with the application in front of it. */
interface AppliedZone extends SolvedProfile {
  readonly application: readonly ApplicationPoint[];
  readonly brakePointM: number;
  readonly tooFastMps: number;
}

function settleGears(problem: ZoneProblem): {
  readonly schedule: GearSchedule;
  readonly solved: SolvedProfile;
} {
  const { car, corner } = problem;
  let schedule: GearSchedule = [{ fromM: Number.NEGATIVE_INFINITY, gear: corner.gears.approach }];
  const { releaseNps } = car.driver;
  let solved = solveProfile(problem, schedule, releaseNps, ROUGH_STEP_M);
  for (let round = 0; round < MOST_GEAR_ROUNDS; round++) {
    const brakePointM = reachedAt(solved.profile, corner.approachSpeedMps);
    const next = scheduleOf(corner, planDownshifts({ ...problem, ...solved, brakePointM }));
    const isSettled = next.every(
      ({ fromM }, i) =>
        Math.abs(fromM - (schedule[i]?.fromM ?? Number.NaN)) < SETTLED_M ||
        fromM === schedule[i]?.fromM,
    );
    if (isSettled) break;
    schedule = next;
    solved = solveProfile(problem, schedule, releaseNps, ROUGH_STEP_M);
  }
  return { schedule, solved: solveProfile(problem, schedule, releaseNps) };
}

/** Where the limit's speed has come down to the approach speed: a little after the brake point. */
function reachedAt(profile: readonly ProfilePoint[], approachSpeedMps: number): number {
  const first = profile.find(({ speedMps }) => speedMps <= approachSpeedMps);
  return (first ?? (profile[profile.length - 1] as ProfilePoint)).sM;
}

function solveProfile(
  problem: ZoneProblem,
  schedule: GearSchedule,
  footReleaseNps: number,
  stepM: number = DEFAULT_STEP_M,
): SolvedProfile {
  const { car, corner, slowestM } = problem;
  const model = zoneModel(problem.model, car, corner, schedule);
  const limit = brakeToSlowest(model, {
    slowestM,
    fromM: -corner.approachM,
    jointsM: [...jointsOf(corner), ...schedule.slice(1).map(({ fromM }) => fromM)],
    stepM,
    stopAboveMps: SPARE_SPEED * corner.approachSpeedMps,
    releaseNps: footReleaseNps * brakeForcePerPedalN(car),
  });
  const profile =
    problem.model === 'two-axle' && risesAgain(limit)
      ? underThrottle(limit, fullThrottle(car, corner), schedule)
      : limit;
  return { model, profile, curve: profileCurve(profile), slowestM };
}

function risesAgain(profile: readonly ProfilePoint[]): boolean {
  return profile.some(({ speedMps }, i) => speedMps > (profile[i - 1]?.speedMps ?? speedMps));
}

function withApplication(
  problem: ZoneProblem,
  schedule: GearSchedule,
  solved: SolvedProfile,
): AppliedZone {
  const { car, corner, model } = problem;
  const limits = {
    approachSpeedMps: corner.approachSpeedMps,
    riseS: car.driver.riseS,
    pitch: model === 'two-axle' ? pitchOf(problem, schedule) : null,
  };
  return { ...solved, ...findBrakePoint(solved.model, limits, solved.curve, -corner.approachM) };
}

function pitchOf({ car, axles, road }: ZoneSetting, schedule: GearSchedule): Pitch {
  return { car: axles, road, engineBraking: engineBrakingOf(car, schedule), hz: car.pitchHz };
}

/** Time the foot's slowness costs from the brake point on; 0 where it never limited. */
function footLossS(problem: ZoneProblem, schedule: GearSchedule, zone: AppliedZone): number {
  if (!zone.profile.some(({ limiter }) => limiter === 'foot')) return 0;
  const unhurried = withApplication(
    problem,
    schedule,
    solveProfile(problem, schedule, Number.POSITIVE_INFINITY),
  );
  const { corner } = problem;
  return (
    durationFrom(zone, zone.brakePointM, corner) - durationFrom(unhurried, zone.brakePointM, corner)
  );
}

/** Places where the curvature or its slope jumps: turn-in and the ends of the segments. */
function jointsOf({ path }: Corner): number[] {
  let at = 0;
  return [0, ...path.segments.map(({ lengthM }) => (at += lengthM))];
}

/** Brake force of both axles at the road per newton at the pedal. */
function brakeForcePerPedalN({ brakes, rotatingShare }: Car): number {
  const { front } = brakes;
  const pressure =
    (brakes.balanceBarFront * brakes.pedalRatio * brakes.pedalEfficiency) /
    front.masterCylinderAreaM2;
  const force =
    (4 * front.padFriction * front.pistonAreaM2 * front.effectiveRadiusM * pressure) /
    front.wheelRadiusM;
  return force / frontBrakeShare(brakes) / (1 + rotatingShare);
}

function pointsOf(setting: ZoneSetting, zone: AppliedZone, schedule: GearSchedule): ZonePoint[] {
  const caughtUp = zone.application[zone.application.length - 1] as ApplicationPoint;
  const toSlowest = timeToSlowest(zone, caughtUp.sM);
  const start = caughtUp.timeS + toSlowest;
  const rise = zone.application.map(
    (point): Motion => ({
      ...point,
      distanceM: zone.slowestM - point.sM,
      gear: gearAt(schedule, point.sM),
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
  return [...rise, ...rest].map((motion) => zonePoint(setting, motion));
}

/** Time along the profile from a place to the slowest point, s. */
function timeToSlowest({ profile, curve }: AppliedZone, fromM: number): number {
  const next = profile.find(({ sM }) => sM >= fromM);
  if (next === undefined) return 0;
  return next.toSlowestS + (2 * (next.sM - fromM)) / (next.speedMps + curve.speedMps(fromM));
}

/** Time from a place on the approach to the slowest point, the approach at constant speed, s. */
function durationFrom(zone: AppliedZone, fromM: number, { approachSpeedMps }: Corner): number {
  const caughtUp = zone.application[zone.application.length - 1] as ApplicationPoint;
  return (
    (zone.brakePointM - fromM) / approachSpeedMps +
    caughtUp.timeS +
    timeToSlowest(zone, caughtUp.sM)
  );
}

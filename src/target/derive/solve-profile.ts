import { frontBrakeShare } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { Corner } from '../../corner/corner.ts';
import { type ProfileCurve, profileCurve } from '../../corner/profile-curve.ts';
import {
  brakeToSlowest,
  DEFAULT_STEP_M,
  type ForceBound,
  type ProfilePoint,
} from '../../corner/speed-profile.ts';
import { fullThrottle } from './exit-drive.ts';
import { upToFullScale } from './pedal-end.ts';
import { underThrottle } from './under-throttle.ts';
import { type GearSchedule, type ModelName, type ZoneSetting, zoneModel } from './zone-model.ts';

/** A car in a corner, the model that solves it, and where it is slowest. */
export interface ZoneProblem extends ZoneSetting {
  readonly model: ModelName;
  readonly slowestM: number;
  /** See `BrakingModel`: neither gears nor loads change it. */
  readonly cornerLimit: BrakingModel['cornerLimit'];
  /** See `AxleCircumstances`; none while it is not known. */
  readonly lateLoadN?: (sM: number) => number;
}

/** The backward pass with the gears given. */
export interface SolvedProfile {
  readonly model: BrakingModel;
  readonly profile: readonly ProfilePoint[];
  readonly curve: ProfileCurve;
  readonly slowestM: number;
}

/** The application begins before the limit has come down to the approach speed: this much of it is looked at. */
const SPARE_SPEED = 1.4;

/**
 * Back from the slowest point at the limit of grip, and between two places where the corner limits under throttle.
 *
 * @param footReleaseNps how fast the foot lets go, N/s at the pedal
 */
export function solveProfile(
  problem: ZoneProblem,
  schedule: GearSchedule,
  footReleaseNps: number,
  stepM: number = DEFAULT_STEP_M,
  bounds: readonly ForceBound[] = [],
): SolvedProfile {
  const { car, corner, slowestM } = problem;
  const grip = zoneModel(problem.model, problem, schedule, problem.lateLoadN);
  const model = { ...upToFullScale(grip, car), cornerLimit: problem.cornerLimit };
  const limit = brakeToSlowest(model, {
    slowestM,
    fromM: -corner.approachM,
    jointsM: [...jointsOf(corner), ...placesOf(schedule.slice(1)), ...placesOf(bounds)],
    stepM,
    stopAboveMps: SPARE_SPEED * corner.approachSpeedMps,
    releaseNps: footReleaseNps * brakeForcePerPedalN(car),
    bounds,
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

function placesOf(starts: readonly { readonly fromM: number }[]): number[] {
  return starts.map(({ fromM }) => fromM);
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

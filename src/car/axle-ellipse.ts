import type { Chassis } from './chassis.ts';
import { wheelbaseM } from './chassis.ts';

/** One axle's part in braking while cornering. */
export interface AxleGrip {
  readonly mu: number;
  /** Axle load without load transfer: static plus downforce, N. */
  readonly loadN: number;
  /** Share of the friction-brake force on this axle. */
  readonly brakeShare: number;
  /** Lateral force the axle carries, N. */
  readonly lateralN: number;
  /** Braking force of the engine on this axle, and on both together, N. */
  readonly engineN?: number;
  readonly totalEngineN?: number;
}

/**
 * Largest friction-brake force of the whole car, N, before the front axle leaves its friction circle, when load moves
 * forward with all braking forces: (s F + E)^2 + Y^2 = mu^2 (N + (F + T) h / L)^2, solved for F.
 *
 * @returns 0 where engine and lateral force already use up the axle, Infinity where no brake force is too much
 */
export function frontLimitN(chassis: Chassis, axle: AxleGrip): number {
  return limitN(axle, chassis.cgHeightM / wheelbaseM(chassis));
}

/** The same for the rear axle, which load transfer unloads: the load is N - (F + T) h / L. */
export function rearLimitN(chassis: Chassis, axle: AxleGrip): number {
  return limitN(axle, -chassis.cgHeightM / wheelbaseM(chassis));
}

/** One axle's part in accelerating while cornering. */
export interface DriveGrip {
  readonly mu: number;
  /** Axle load without load transfer: static plus downforce, N. */
  readonly loadN: number;
  /** Share of the driving force on this axle; 0 is not driven. */
  readonly driveShare: number;
  /** Lateral force the axle carries, N. */
  readonly lateralN: number;
}

/**
 * Largest driving force of the whole car, N, before the front axle leaves its friction circle, when load moves to the
 * rear with it: (s F)^2 + Y^2 = mu^2 (N - F h / L)^2. An axle that is not driven still has to carry its lateral force.
 *
 * @returns 0 where the lateral force already uses up the axle, Infinity where no force is too much
 * @source Gillespie, Fundamentals of Vehicle Dynamics, ch. 2 (traction-limited acceleration), with the lateral force
 */
export function frontDriveLimitN(chassis: Chassis, { driveShare, ...axle }: DriveGrip): number {
  return limitN({ ...axle, brakeShare: driveShare }, -chassis.cgHeightM / wheelbaseM(chassis));
}

/** The same for the rear axle, which load transfer loads: the load is N + F h / L. */
export function rearDriveLimitN(chassis: Chassis, { driveShare, ...axle }: DriveGrip): number {
  return limitN({ ...axle, brakeShare: driveShare }, chassis.cgHeightM / wheelbaseM(chassis));
}

/** @param gain load the axle gains per newton of force along the car, negative where it loses load */
function limitN(axle: AxleGrip, gain: number): number {
  const { mu, brakeShare, lateralN, engineN = 0, totalEngineN = engineN } = axle;
  const load = axle.loadN + totalEngineN * gain;
  if (load <= 0) return 0;
  if (brakeShare === 0 && engineN === 0) return untilUnloadedN(mu * load - lateralN, mu * gain);
  // a F^2 + 2 b F - c = 0
  const a = brakeShare ** 2 - (mu * gain) ** 2;
  const b = brakeShare * engineN - mu ** 2 * load * gain;
  const c = (mu * load) ** 2 - engineN ** 2 - lateralN ** 2;
  const root = b * b + a * c;
  if (root < 0 || (c <= 0 && b >= 0)) return 0;
  // Of the two forms of the root, the one that adds numbers of one sign.
  if (b > 0) return c / (b + Math.sqrt(root));
  return a > 0 ? (Math.sqrt(root) - b) / a : Number.POSITIVE_INFINITY;
}

/** An axle that only corners: until its spare lateral force is gone with its load; Infinity where it gains load. */
function untilUnloadedN(spareN: number, sparePerNewton: number): number {
  if (sparePerNewton >= 0) return Number.POSITIVE_INFINITY;
  return Math.max(0, spareN / -sparePerNewton);
}

/** Brake force at which the front axle can carry the most lateral force, and that force as a share of mu N. */
export function bestFrontLateral(
  chassis: Chassis,
  { mu, loadN, brakeShare }: Omit<AxleGrip, 'lateralN'>,
): { readonly brakeForceN: number; readonly gain: number } {
  const transfer = (mu * chassis.cgHeightM) / wheelbaseM(chassis);
  const c = brakeShare ** 2 - transfer ** 2;
  return { brakeForceN: (mu * loadN * transfer) / c, gain: brakeShare / Math.sqrt(c) };
}

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

function limitN(axle: AxleGrip, gain: number): number {
  const { mu, loadN, brakeShare, lateralN, engineN = 0, totalEngineN = engineN } = axle;
  return circleLimitN(mu, loadN, brakeShare, lateralN, engineN, totalEngineN, gain);
}

/**
 * Largest force F along the whole car, N, braking or driving, before an axle with the share s of it leaves its friction
 * circle: (s F + E)^2 + Y^2 = mu^2 (N + (F + T) g)^2. The solver asks some ten thousand times a zone, hence the numbers
 * one by one.
 *
 * @param loadN N, without load transfer
 * @param heldN E, what acts on this axle already
 * @param totalHeldN T, what acts on both axles already
 * @param gain g, load the axle gains per newton along the car, negative where it loses load
 */
export function circleLimitN(
  mu: number,
  loadN: number,
  share: number,
  lateralN: number,
  heldN: number,
  totalHeldN: number,
  gain: number,
): number {
  const load = loadN + totalHeldN * gain;
  if (load <= 0) return 0;
  if (share === 0 && heldN === 0) return untilUnloadedN(mu * load - lateralN, mu * gain);
  // a F^2 + 2 b F - c = 0
  const a = share * share - mu * gain * mu * gain;
  const b = share * heldN - mu * mu * load * gain;
  const c = mu * load * mu * load - heldN * heldN - lateralN * lateralN;
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

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
  /** Braking force of the engine on the rear axle, N: it also moves load to the front one. */
  readonly engineBrakingN?: number;
}

/**
 * Largest friction-brake force of the whole car, N, before the front axle leaves its friction circle, when load moves
 * forward with that force: (phi F)^2 + Y^2 = mu^2 (N + (F + E) h / L)^2, solved for F.
 *
 * @returns 0 where the axle cannot even carry the lateral force, Infinity where no brake force is too much
 */
export function frontLimitN(chassis: Chassis, axle: AxleGrip): number {
  const { mu, brakeShare, lateralN, engineBrakingN = 0 } = axle;
  const perNewton = chassis.cgHeightM / wheelbaseM(chassis);
  const transfer = mu * perNewton;
  const c = brakeShare ** 2 - transfer ** 2;
  const grip = mu * (axle.loadN + engineBrakingN * perNewton);
  const root = (grip * brakeShare) ** 2 - c * lateralN ** 2;
  if (root < 0) return 0;
  if (c <= 0) return Infinity;
  return (grip * transfer + Math.sqrt(root)) / c;
}

/**
 * The same for the rear axle, which load transfer unloads and the engine brakes too:
 * ((1-phi) F + E)^2 + Y^2 = mu^2 (N - (F + E) h / L)^2. Written so that nothing is divided by a difference that may
 * vanish.
 *
 * @returns 0 where engine and lateral force already use up the axle
 */
export function rearLimitN(chassis: Chassis, axle: AxleGrip): number {
  const { mu, brakeShare, lateralN, engineBrakingN = 0 } = axle;
  const perNewton = chassis.cgHeightM / wheelbaseM(chassis);
  const transfer = mu * perNewton;
  const grip = mu * (axle.loadN - engineBrakingN * perNewton);
  const spare = grip ** 2 - engineBrakingN ** 2 - lateralN ** 2;
  if (grip <= 0 || spare <= 0) return 0;
  const linear = brakeShare * engineBrakingN + grip * transfer;
  return spare / (linear + Math.sqrt(linear ** 2 + (brakeShare ** 2 - transfer ** 2) * spare));
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

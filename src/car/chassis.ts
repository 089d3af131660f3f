import { STANDARD_GRAVITY_MPS2 } from '../units.ts';

/** Mass and where it sits. The two centre-of-gravity distances add up to the wheelbase. */
export interface Chassis {
  readonly massKg: number;
  /** Centre of gravity to the front axle, m. */
  readonly cgToFrontM: number;
  /** Centre of gravity to the rear axle, m. */
  readonly cgToRearM: number;
  readonly cgHeightM: number;
  /** Static rolling radii of the loaded wheels, m. */
  readonly frontWheelRadiusM: number;
  readonly rearWheelRadiusM: number;
}

/** A pair of values for the two axles; forces and loads are sums over both wheels. */
export interface Axles {
  readonly front: number;
  readonly rear: number;
}

export function wheelbaseM({ cgToFrontM, cgToRearM }: Chassis): number {
  return cgToFrontM + cgToRearM;
}

export function weightN({ massKg }: Chassis): number {
  return massKg * STANDARD_GRAVITY_MPS2;
}

/** Axle loads at rest on the flat, N: front W b / L, rear W a / L. */
export function staticAxleLoadsN(chassis: Chassis): Axles {
  const perMetre = weightN(chassis) / wheelbaseM(chassis);
  return { front: perMetre * chassis.cgToRearM, rear: perMetre * chassis.cgToFrontM };
}

/**
 * Load moved from the rear axle to the front one, N: (m D h - F_d h_d) / L. Drag that acts above the ground takes its
 * own moment out; with drag at the height of the centre of gravity this is (tyre forces) h / L.
 *
 * @param decelerationMps2 total deceleration, positive when slowing
 * @source Gillespie, Fundamentals of Vehicle Dynamics, SAE 1992, ch. 1 and 3
 */
export function loadTransferN(
  chassis: Chassis,
  decelerationMps2: number,
  dragN = 0,
  dragHeightM: number = chassis.cgHeightM,
): number {
  const moment = chassis.massKg * decelerationMps2 * chassis.cgHeightM - dragN * dragHeightM;
  return moment / wheelbaseM(chassis);
}

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

import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import type { Road, TwoAxleCar } from './two-axle.ts';

/** What an axle carries at a place and speed before anything acts along the car, N; sums over both wheels. */
export interface WheelForces {
  /** Static load, what a bank presses on, and downforce. */
  readonly frontLoadN: number;
  readonly rearLoadN: number;
  /** Across, after what the bank carries; without its sign. */
  readonly frontAcrossN: number;
  readonly rearAcrossN: number;
}

/** @param w squared speed, m^2/s^2 */
export function wheelForces(car: TwoAxleCar, road: Road, sM: number, w: number): WheelForces {
  const { massKg, cgToFrontM, cgToRearM } = car.chassis;
  const { airDensityKgpm3, downforceAreaM2, frontShare } = car.aero;
  const curvature = Math.abs(road.curvatureAt(sM));
  const bank = road.bankAt(sM);
  const perMetre = massKg / (cgToFrontM + cgToRearM);
  const restN = perMetre * (STANDARD_GRAVITY_MPS2 + bank * curvature * w);
  const downN = 0.5 * airDensityKgpm3 * downforceAreaM2 * w;
  const acrossN = perMetre * Math.abs(curvature * w - STANDARD_GRAVITY_MPS2 * bank);
  return {
    frontLoadN: restN * cgToRearM + downN * frontShare,
    rearLoadN: restN * cgToFrontM + downN * (1 - frontShare),
    frontAcrossN: acrossN * cgToRearM,
    rearAcrossN: acrossN * cgToFrontM,
  };
}

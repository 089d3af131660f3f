import type { Car } from '../car/car.ts';
import { wheelbaseM } from '../car/chassis.ts';

/** Angle at the steering wheel that a curvature asks for at a speed, rad, left positive. */
export function railSteeringRad(car: Car, curvature: number, speedMps: number): number {
  const accelYMps2 = curvature * speedMps * speedMps;
  const wheelRad = curvature * wheelbaseM(car.chassis) + car.understeerRadpMps2 * accelYMps2;
  return wheelRad * car.steeringRatio;
}

import type { Axles } from '../car/chassis.ts';
import { driveLimit } from './axle-limit.ts';
import type { Road, TwoAxleCar } from './two-axle.ts';
import { wheelForces } from './wheel-forces.ts';

/**
 * Largest driving force of the whole car, N, that each axle allows at a place and squared speed: the driven one by its
 * friction ellipse, the other by the lateral force it still has to carry while the load moves to the rear.
 *
 * @source Gillespie, Fundamentals of Vehicle Dynamics, ch. 2 (traction-limited acceleration), with the lateral force
 */
export function driveLimits(car: TwoAxleCar, road: Road): (sM: number, w: number) => Axles {
  const front = driveLimit(car, 'front');
  const rear = driveLimit(car, 'rear');
  return (sM, w) => {
    const forces = wheelForces(car, road, sM, w);
    return {
      front: front(forces.frontLoadN, forces.frontAcrossN, 0),
      rear: rear(forces.rearLoadN, forces.rearAcrossN, 0),
    };
  };
}

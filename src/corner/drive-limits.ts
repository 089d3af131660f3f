import { frontDriveLimitN, rearDriveLimitN } from '../car/axle-ellipse.ts';
import { type Axles, wheelbaseM } from '../car/chassis.ts';
import { axleFrictionFactor, type Tyre } from '../car/tyre.ts';
import { lateralForcesN, loadsN, type Road, type TwoAxleCar } from './two-axle.ts';

/** Rounds of the fixed point for friction that depends on load; each gains about one decimal place. */
const LOAD_ROUNDS = 4;

/**
 * Largest driving force of the whole car, N, that each axle allows at a place and squared speed: the driven one by its
 * friction ellipse, the other by the lateral force it still has to carry while the load moves to the rear.
 */
export function driveLimitsN(car: TwoAxleCar, road: Road, sM: number, w: number): Axles {
  const { chassis } = car;
  const loads = loadsN(car, road, sM, w);
  const lateral = lateralForcesN(car, road, sM, w);
  const perNewton = chassis.cgHeightM / wheelbaseM(chassis);
  const solve = (side: 'front' | 'rear', tyre: Tyre): number => {
    const isFront = side === 'front';
    const limitOf = isFront ? frontDriveLimitN : rearDriveLimitN;
    const movedN = (lateral[side] * chassis.cgHeightM) / car.trackM;
    const rounds = tyre.loadSensitivity === 0 ? 1 : LOAD_ROUNDS;
    let force = 0;
    for (let round = 0; round < rounds && Number.isFinite(force); round++) {
      const load = loads[side] + (isFront ? -1 : 1) * force * perNewton;
      const factor = car.gripShare * axleFrictionFactor(tyre, load, movedN);
      force = limitOf(chassis, {
        mu: tyre.longitudinalFriction * factor,
        loadN: loads[side],
        driveShare: isFront ? car.frontDriveShare : 1 - car.frontDriveShare,
        lateralN: (lateral[side] * tyre.longitudinalFriction) / tyre.lateralFriction,
      });
    }
    return force;
  };
  return { front: solve('front', car.frontTyre), rear: solve('rear', car.rearTyre) };
}

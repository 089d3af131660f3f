import { frontForceN } from '../car/brake-split.ts';
import type { Axles } from '../car/chassis.ts';
import { axleFrictionFactor, type Tyre } from '../car/tyre.ts';
import { loadPerNewton } from './axle-limit.ts';
import { brakeSplitIn, loadsMeanwhile, type Road, type TwoAxleCar } from './two-axle.ts';
import { wheelForces } from './wheel-forces.ts';

/** A car somewhere on the path, doing something. */
interface Doing {
  readonly sM: number;
  readonly speedMps: number;
  /** Friction brakes of both axles at the road, N. */
  readonly brakeForceN: number;
  /** Engine braking, N. */
  readonly engineN: number;
  /** See `AxleCircumstances`; 0 if left out. */
  readonly lateLoadN?: number;
  /** Share of wheel load that a bump takes away at this place; 0 without one. */
  readonly unloaded?: number;
}

/** Grip used over grip there is, for each axle: 1 is the limit, above it the axle slides. */
export function axleUse(car: TwoAxleCar, road: Road, doing: Doing): Axles {
  const { sM, speedMps, brakeForceN, engineN, lateLoadN = 0, unloaded = 0 } = doing;
  const w = speedMps ** 2;
  const forces = loadsMeanwhile(wheelForces(car, road, sM, w), lateLoadN);
  const transferN = (brakeForceN + engineN) * loadPerNewton(car);
  const frontN = frontForceN(brakeSplitIn(car), brakeForceN);
  const use = (side: 'front' | 'rear', tyre: Tyre, brakeN: number, driveShare: number): number => {
    const isFront = side === 'front';
    const restN = isFront ? forces.frontLoadN : forces.rearLoadN;
    const acrossN = isFront ? forces.frontAcrossN : forces.rearAcrossN;
    const load = (restN + (isFront ? transferN : -transferN)) * (1 - unloaded);
    if (load <= 0) return Number.POSITIVE_INFINITY;
    const moved = (acrossN * car.chassis.cgHeightM) / car.trackM;
    const factor = car.gripShare * axleFrictionFactor(tyre, load, moved);
    const along = (brakeN + driveShare * engineN) / tyre.longitudinalFriction;
    return Math.hypot(along, acrossN / tyre.lateralFriction) / (factor * load);
  };
  return {
    front: use('front', car.frontTyre, frontN, car.frontDriveShare),
    rear: use('rear', car.rearTyre, brakeForceN - frontN, 1 - car.frontDriveShare),
  };
}

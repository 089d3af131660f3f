import type { Car } from './car.ts';
import type { Axles } from './chassis.ts';
import { electricBrakingN } from './electric-braking.ts';
import { brakingTorqueNm, engineBrakingN, engineRpm } from './gearbox.ts';

/** What slows each axle beside the friction brakes, N: the engine on the driven axles, a hybrid's motor on the rear one. */
export function slowingForcesN(car: Car, gear: number, speedMps: number): Axles {
  const rpm = engineRpm(car.gearbox, gear, speedMps);
  const engineN = engineBrakingN(car.gearbox, gear, brakingTorqueNm(car.engine, rpm));
  const motorN = electricBrakingN(car.electric, speedMps, car.chassis.rearWheelRadiusM);
  return {
    front: engineN * car.frontDriveShare,
    rear: engineN * (1 - car.frontDriveShare) + motorN,
  };
}

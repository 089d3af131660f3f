import { downforceN } from '../car/aero.ts';
import { linePressuresPa, wheelTorqueNm } from '../car/brakes.ts';
import type { Car } from '../car/car.ts';
import { staticAxleLoadsN, wheelbaseM } from '../car/chassis.ts';
import type { RearValve } from '../car/rear-valve.ts';
import type { Tyre } from '../car/tyre.ts';
import type { Corner } from '../corner/corner.ts';

/** What a step needs of one axle, worked out once. Forces and inertia are those of both wheels. */
export interface AxleModel {
  /** +1 where pitch brings load, -1 where it takes it away. */
  readonly transferSign: 1 | -1;
  readonly restLoadN: number;
  /** Downforce per squared speed. */
  readonly downforcePerW: number;
  /** Share of the car's lateral force. */
  readonly lateralShare: number;
  readonly tyre: Tyre;
  /** Share of the engine's force, and of a hybrid's motor. */
  readonly driveShare: number;
  readonly motorShare: number;
  /** Line pressure for level 1, Pa, in front of the valve. */
  readonly pressurePa: number;
  readonly valve: RearValve | null;
  readonly pushOutPa: number;
  /** Force at the road per pascal above push-out. */
  readonly forcePerPa: number;
  /** r^2 / J: how soon torque beyond the tyres slows the wheels, 1/kg. */
  readonly perInertia: number;
  readonly slidingShare: number;
}

/** The car and the corner as the steps take them. */
export interface LiveModel {
  readonly car: Car;
  readonly corner: Corner;
  readonly front: AxleModel;
  readonly rear: AxleModel;
  readonly wheelbaseM: number;
  /** Load transfer per newton along the car, and across it. */
  readonly alongTransfer: number;
  readonly acrossTransfer: number;
  /** How fast pitch settles, 1/s. */
  readonly pitchRate: number;
}

/** The two-axle model of `solveZone`, resolved to what a step needs. The car has all of its grip, whatever the target uses. */
export function liveModel(car: Car, corner: Corner): LiveModel {
  const { chassis } = car;
  const baseM = wheelbaseM(chassis);
  return {
    car,
    corner,
    front: axleModel(car, 'front'),
    rear: axleModel(car, 'rear'),
    wheelbaseM: baseM,
    alongTransfer: chassis.cgHeightM / baseM,
    acrossTransfer: chassis.cgHeightM / car.trackM,
    pitchRate: 2 * Math.PI * car.pitchHz,
  };
}

function axleModel(car: Car, side: 'front' | 'rear'): AxleModel {
  const { brakes, chassis, frontDriveShare } = car;
  const brake = brakes[side];
  const isFront = side === 'front';
  const { cgToFrontM, cgToRearM } = chassis;
  const wheel = car.wheels[side];
  return {
    transferSign: isFront ? 1 : -1,
    restLoadN: staticAxleLoadsN(chassis)[side],
    downforcePerW: downforceN(car.aero, 1)[side],
    lateralShare: (isFront ? cgToRearM : cgToFrontM) / wheelbaseM(chassis),
    tyre: car.tyres[side],
    driveShare: isFront ? frontDriveShare : 1 - frontDriveShare,
    motorShare: isFront ? 0 : 1,
    pressurePa: linePressuresPa({ ...brakes, rearValve: null }, car.fullScalePedalForceN)[side],
    valve: isFront ? null : brakes.rearValve,
    pushOutPa: brakes.pushOutPa,
    forcePerPa: (2 * wheelTorqueNm(brake, 1, 0)) / brake.wheelRadiusM,
    perInertia: brake.wheelRadiusM ** 2 / (2 * wheel.inertiaKgm2),
    slidingShare: wheel.slidingShare,
  };
}

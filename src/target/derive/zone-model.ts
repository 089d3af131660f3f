import { brakeSplitOf } from '../../car/brake-split.ts';
import { frontBrakeShare } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import { electricBrakingN } from '../../car/electric-braking.ts';
import { brakingTorqueNm, engineBrakingN, engineRpm } from '../../car/gearbox.ts';
import type { BrakingModel } from '../../corner/braking-model.ts';
import type { Corner } from '../../corner/corner.ts';
import { pointMassModel } from '../../corner/point-mass.ts';
import {
  type AxleCircumstances,
  type EngineBraking,
  type Road,
  type TwoAxleCar,
  twoAxleModel,
} from '../../corner/two-axle.ts';
import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';

export type ModelName = 'two-axle' | 'point-mass';

/** A gear from a place on, in driving order; the first entry starts before the zone. */
export type GearSchedule = readonly { readonly fromM: number; readonly gear: number }[];

/** The car as the solver takes it. */
export function twoAxleCar(car: Car, gripShare: number): TwoAxleCar {
  return {
    chassis: car.chassis,
    aero: car.aero,
    frontTyre: car.tyres.front,
    rearTyre: car.tyres.rear,
    trackM: car.trackM,
    frontBrakeShare: frontBrakeShare(car.brakes),
    brakeSplit: brakeSplitOf(car.brakes, car.rotatingShare),
    frontDriveShare: car.frontDriveShare,
    rollingResistance: car.rollingResistance,
    gripShare,
  };
}

export function roadOf(corner: Corner): Road {
  return {
    curvatureAt: corner.path.curvatureAt,
    slopeAt: (sM) => corner.slopeAt(sM),
    bankAt: (sM) => corner.bankAt(sM),
  };
}

/** A car in a corner, resolved once for everything that asks place by place. */
export interface ZoneSetting {
  readonly car: Car;
  readonly corner: Corner;
  readonly axles: TwoAxleCar;
  readonly road: Road;
}

export function zoneSetting(car: Car, corner: Corner): ZoneSetting {
  return { car, corner, axles: twoAxleCar(car, corner.gripShare), road: roadOf(corner) };
}

export function gearAt(schedule: GearSchedule, sM: number): number {
  for (let i = schedule.length - 1; i > 0; i--) {
    const entry = schedule[i] as GearSchedule[number];
    if (sM >= entry.fromM) return entry.gear;
  }
  return schedule[0]?.gear ?? 1;
}

/** Closed-throttle braking in the gear of each place, N, with the motor of a hybrid. */
export function engineBrakingOf(car: Car, schedule: GearSchedule): EngineBraking {
  return (sM, w) => engineBrakingInGearN(car, gearAt(schedule, sM), Math.sqrt(w));
}

/** Closed-throttle braking in a gear, N, with the motor of a hybrid. */
export function engineBrakingInGearN(car: Car, gear: number, speedMps: number): number {
  return (
    offBrakeInGearN(car, gear, speedMps) +
    electricBrakingN(car.electric, speedMps, car.chassis.rearWheelRadiusM)
  );
}

/** The same with the foot off the brake, where the motor of a hybrid rests. */
function offBrakeInGearN({ gearbox, engine }: Car, gear: number, speedMps: number): number {
  const rpm = engineRpm(gearbox, gear, speedMps);
  return engineBrakingN(gearbox, gear, brakingTorqueNm(engine, rpm));
}

/** The model of a zone. The point mass takes the smaller friction of the two axles and no engine. */
export function zoneModel(
  name: ModelName,
  { car, corner, axles, road }: ZoneSetting,
  schedule: GearSchedule,
  lateLoadN?: AxleCircumstances['lateLoadN'],
): BrakingModel {
  if (name === 'two-axle') {
    return twoAxleModel(axles, road, engineBrakingOf(car, schedule), {
      ...(lateLoadN === undefined ? {} : { lateLoadN }),
      offBrake: (sM, w) => offBrakeInGearN(car, gearAt(schedule, sM), Math.sqrt(w)),
    });
  }
  const { front, rear } = car.tyres;
  const along = Math.min(front.longitudinalFriction, rear.longitudinalFriction) * corner.gripShare;
  const across = Math.min(front.lateralFriction, rear.lateralFriction) * corner.gripShare;
  const perSpeedSquared = (0.5 * car.aero.airDensityKgpm3) / car.chassis.massKg;
  return pointMassModel(
    {
      massKg: car.chassis.massKg,
      alongMps2: along * STANDARD_GRAVITY_MPS2,
      acrossMps2: across * STANDARD_GRAVITY_MPS2,
      downforceShare: (perSpeedSquared * car.aero.downforceAreaM2) / STANDARD_GRAVITY_MPS2,
      dragPerMetre: perSpeedSquared * car.aero.dragAreaM2,
    },
    corner.path.curvatureAt,
  );
}

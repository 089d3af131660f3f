import { dragN } from '../../car/aero.ts';
import { pedalForceOf } from '../../car/brake-force.ts';
import { linePressuresPa } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import { weightN, wheelbaseM } from '../../car/chassis.ts';
import { axleUse } from '../../corner/axle-use.ts';
import type { Limiter } from '../../corner/braking-model.ts';
import { wheelForces } from '../../corner/wheel-forces.ts';
import { engineBrakingInGearN, type ZoneSetting } from './zone-model.ts';

/** One place of a derived zone. */
export interface ZonePoint {
  /** Along the path from turn-in, m, negative before it. */
  readonly sM: number;
  /** To the slowest point, m, positive before it. */
  readonly distanceM: number;
  /** From the brake point, s. */
  readonly timeS: number;
  readonly speedMps: number;
  /** ISO 8855: negative when slowing, positive to the left. */
  readonly accelXMps2: number;
  readonly accelYMps2: number;
  /** Friction brakes of both axles, at the road. */
  readonly brakeForceN: number;
  readonly pressureFrontPa: number;
  readonly pressureRearPa: number;
  readonly pedalForceN: number;
  readonly level: number;
  /** At the steering wheel, positive to the left. */
  readonly steeringRad: number;
  readonly gear: number;
  /** Grip used over grip there is, by axle. */
  readonly frontUse: number;
  readonly rearUse: number;
  /** Load that the front axle has beyond what the braking accounts for, N: pitch is late. Negative where it lacks it. */
  readonly lateLoadN: number;
  readonly limiter: Limiter;
}

/** What is known of a place before the car's hydraulics and steering are asked. */
export interface Motion {
  readonly sM: number;
  readonly distanceM: number;
  readonly timeS: number;
  readonly speedMps: number;
  readonly decelerationMps2: number;
  readonly brakeForceN: number;
  readonly gear: number;
  readonly lateLoadN: number;
  readonly limiter: Limiter;
}

/** From the car's motion to what the foot and the hands do for it. */
export function zonePointOf(setting: ZoneSetting): (motion: Motion) => ZonePoint {
  const { car, corner, axles, road } = setting;
  const pedalForceN = pedalForceOf(car.brakes);
  const turningM = wheelbaseM(car.chassis);
  return (motion) => {
    const { sM, speedMps, brakeForceN, lateLoadN } = motion;
    const footN = brakeForceN > 0 ? pedalForceN(atTheDiscsN(car, motion)) : 0;
    const pressures = linePressuresPa(car.brakes, footN);
    const curvature = corner.path.curvatureAt(sM);
    const accelYMps2 = curvature * speedMps ** 2;
    const engineN = engineForceN(setting, motion);
    const use = axleUse(axles, road, { sM, speedMps, brakeForceN, engineN, lateLoadN });
    const wheelRad = curvature * turningM + car.understeerRadpMps2 * accelYMps2;
    return {
      sM,
      distanceM: motion.distanceM,
      timeS: motion.timeS,
      speedMps,
      accelXMps2: -motion.decelerationMps2,
      accelYMps2,
      brakeForceN,
      pressureFrontPa: pressures.front,
      pressureRearPa: pressures.rear,
      pedalForceN: footN,
      level: footN / car.fullScalePedalForceN,
      steeringRad: wheelRad * car.steeringRatio,
      gear: motion.gear,
      frontUse: use.front,
      rearUse: use.rear,
      lateLoadN,
      limiter: motion.limiter,
    };
  };
}

/**
 * Force of the brakes, N: what the road gets, and what slows the wheels and all that turns with them at the same rate.
 * m (1 + k) D is the sum of all that slows the car, of which the tyres carry all but the share of k.
 */
export function atTheDiscsN(
  { chassis, rotatingShare }: Car,
  { brakeForceN, decelerationMps2 }: Pick<Motion, 'brakeForceN' | 'decelerationMps2'>,
): number {
  return brakeForceN + rotatingShare * chassis.massKg * decelerationMps2;
}

/**
 * Engine braking, N: off the brake the throttle lets the car keep only as much of it as the motion shows. Negative where
 * the engine drives.
 */
function engineForceN({ car, corner, axles, road }: ZoneSetting, motion: Motion): number {
  const { sM, speedMps, gear } = motion;
  const fullN = engineBrakingInGearN(car, gear, speedMps);
  if (motion.brakeForceN > 0) return fullN;
  const { frontLoadN, rearLoadN } = wheelForces(axles, road, sM, speedMps ** 2);
  const othersN =
    dragN(car.aero, speedMps) +
    car.rollingResistance * (frontLoadN + rearLoadN) +
    weightN(car.chassis) * corner.slopeAt(sM);
  const neededN = car.chassis.massKg * motion.decelerationMps2 - othersN;
  return Math.min(fullN, motion.limiter === 'throttle' ? neededN : Math.max(0, neededN));
}

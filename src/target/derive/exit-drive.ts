import { dragN } from '../../car/aero.ts';
import type { Car } from '../../car/car.ts';
import { topSpeedMps } from '../../car/car-limits.ts';
import { weightN } from '../../car/chassis.ts';
import { driveForceN, overRevSpeedMps } from '../../car/gearbox.ts';
import { upshiftSpeedMps } from '../../car/upshift.ts';
import type { Corner } from '../../corner/corner.ts';
import { driveLimits } from '../../corner/drive-limits.ts';
import type { DriveModel } from '../../corner/drive-model.ts';
import { speedCeiling } from '../../corner/speed-ceiling.ts';
import { wheelForces } from '../../corner/wheel-forces.ts';
import { roadOf, twoAxleCar, zoneModel, zoneSetting } from './zone-model.ts';

/** Keeps a speed that is worked out from the rev limit on its near side. */
const JUST_BELOW = 1 - 1e-9;

/**
 * Full throttle out of a corner: the smaller of what the engine pulls in the gear and what the axles carry, less drag,
 * rolling resistance and slope. Rotating parts take their share of what the engine pulls, and none of what the tyres
 * carry. Left out: a hybrid's motor, the time a driver takes from brake to throttle, wheelspin.
 */
export function exitDrive(car: Car, corner: Corner, fromM: number, toM: number): DriveModel {
  const road = speedCeiling(brakingInGear(car, corner), fromM, toM);
  const most = (topSpeedMps(car) * JUST_BELOW) ** 2;
  const upshifts = car.gearbox.ratios.map(
    (_, i) => (upshiftSpeedMps(car.gearbox, car.engine, i + 1) * JUST_BELOW) ** 2,
  );
  return {
    accelerationMps2: fullThrottle(car, corner),
    ceiling: (sM) => Math.min(most, road(sM)),
    upshiftSquared: (gear) => upshifts[gear - 1] ?? Number.POSITIVE_INFINITY,
    shiftS: car.gearbox.shiftS,
  };
}

/** Acceleration at full throttle in a gear, m/s^2; with none, what drag, rolling resistance and slope leave. */
export function fullThrottle(car: Car, corner: Corner): DriveModel['accelerationMps2'] {
  const resistanceN = resistanceOf(car, corner);
  const carriedN = carriedOf(car, corner);
  const { massKg } = car.chassis;
  const spunKg = massKg * (1 + car.rotatingShare);
  return (sM, w, gear) => {
    const against = resistanceN(sM, w);
    if (gear === null) return -against / spunKg;
    const pulled = (pulledN(car, gear, Math.sqrt(w)) - against) / spunKg;
    return Math.min(pulled, (carriedN(sM, w) - against) / massKg);
  };
}

function brakingInGear(car: Car, corner: Corner): ReturnType<typeof zoneModel> {
  const { slowest } = corner.gears;
  return zoneModel('two-axle', zoneSetting(car, corner), [
    { fromM: Number.NEGATIVE_INFINITY, gear: slowest },
  ]);
}

/** Drag, rolling resistance and slope, N. */
function resistanceOf(car: Car, corner: Corner): (sM: number, w: number) => number {
  const axles = twoAxleCar(car, corner.gripShare);
  const road = roadOf(corner);
  return (sM, w) => {
    const { frontLoadN, rearLoadN } = wheelForces(axles, road, sM, w);
    return (
      dragN(car.aero, Math.sqrt(w)) +
      car.rollingResistance * (frontLoadN + rearLoadN) +
      weightN(car.chassis) * corner.slopeAt(sM)
    );
  };
}

/** Driving force that both axles carry, N. */
function carriedOf(car: Car, corner: Corner): (sM: number, w: number) => number {
  const limits = driveLimits(twoAxleCar(car, corner.gripShare), roadOf(corner));
  return (sM, w) => {
    const { front, rear } = limits(sM, w);
    return Math.min(front, rear);
  };
}

/** Full throttle in a gear, N; beyond the rev limit, where a step may look, what there is at it. */
function pulledN({ gearbox, engine }: Car, gear: number, speedMps: number): number {
  const most = overRevSpeedMps(gearbox, gear) * JUST_BELOW;
  return driveForceN(gearbox, engine, gear, Math.min(speedMps, most));
}

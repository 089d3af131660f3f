import type { AntiLockState } from '../car/anti-lock.ts';
import type { Transmission } from './engine-force.ts';
import { feedOf, type InputFeed, leftOver } from './input-feed.ts';
import type { LiveCar } from './live-car.ts';
import type { LiveEvent } from './live-event.ts';
import type { LiveInputs } from './live-inputs.ts';
import { type LiveModel, liveModel } from './live-model.ts';
import type { LiveZone } from './live-zone.ts';
import { type Motion, motionOf } from './motion.ts';
import { type Asked, newRates, type Rates } from './motion-rates.ts';

/** A car being driven within one call. Scratch: the steps change it in place. */
export interface LiveDrive {
  readonly zone: LiveZone;
  readonly model: LiveModel;
  readonly feed: InputFeed;
  readonly gears: Transmission;
  readonly asked: Asked;
  readonly motion: Motion;
  readonly middle: Motion;
  /** At the start of the step. */
  readonly rates: Rates;
  readonly middleRates: Rates;
  readonly events: LiveEvent[];
  /** Over the step, so that its integral is the change of speed. */
  accelXMps2: number;
  step: number;
  brakedFromM: number | null;
  restingLevel: number;
  frontAntiLock: AntiLockState;
  rearAntiLock: AntiLockState;
}

/** Takes up a car where an earlier call left it. */
export function driveOf(zone: LiveZone, car: LiveCar, inputs: LiveInputs): LiveDrive {
  const model = liveModel(zone.car, zone.corner);
  return {
    zone,
    model,
    feed: feedOf(car.held, car.waiting, inputs),
    gears: { gear: car.gear, shift: car.shift, rearUse: car.shift?.rearUse ?? 0 },
    asked: {
      level: 0,
      throttle: 0,
      clutch: 0,
      steeringRad: null,
      engineGives: false,
      frontThrough: 1,
      rearThrough: 1,
    },
    motion: motionOf(car),
    middle: motionOf(car),
    rates: { ...newRates(), ...lastRates(car) },
    middleRates: newRates(),
    events: [...car.events],
    accelXMps2: car.accelXMps2,
    step: car.step,
    brakedFromM: car.brakedFromM,
    restingLevel: car.restingLevel,
    frontAntiLock: car.front.antiLock,
    rearAntiLock: car.rear.antiLock,
  };
}

/** So that a call without a step changes nothing. */
function lastRates({ accelYMps2, front, rear }: LiveCar): Partial<Rates> {
  return { accelYMps2, frontUse: front.use, rearUse: rear.use };
}

/** The car as the steps have left it. */
export function carOf(drive: LiveDrive, rpm: number): LiveCar {
  const { motion, rates, gears } = drive;
  return {
    step: drive.step,
    sM: motion.sM,
    speedMps: motion.speedMps,
    accelXMps2: drive.accelXMps2,
    accelYMps2: rates.accelYMps2,
    brakedFromM: drive.brakedFromM,
    transferN: motion.transferN,
    front: { use: rates.frontUse, slip: motion.frontSlip, antiLock: drive.frontAntiLock },
    rear: { use: rates.rearUse, slip: motion.rearSlip, antiLock: drive.rearAntiLock },
    gear: gears.gear,
    rpm,
    shift: gears.shift && { ...gears.shift, rearUse: gears.rearUse },
    workJ: { front: motion.frontWorkJ, rear: motion.rearWorkJ },
    events: drive.events,
    restingLevel: drive.restingLevel,
    held: drive.feed.held,
    waiting: leftOver(drive.feed),
  };
}

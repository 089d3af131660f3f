import { ANTI_LOCK_OFF } from '../car/anti-lock.ts';
import { engineRpm } from '../car/gearbox.ts';
import { shiftSteps } from './change-gear.ts';
import { type AxisValues, heldInputs, NOTHING_SAID } from './input-feed.ts';
import type { LiveAxle, LiveCar } from './live-car.ts';
import { carOf, driveOf, type LiveDrive } from './live-drive.ts';
import { type LiveInputs, NO_INPUTS } from './live-inputs.ts';
import type { LiveZone } from './live-zone.ts';
import { stepTimeS } from './step-time.ts';
import { takeStep } from './take-step.ts';

/** A stamp moves by half a tick of 0.1 ms when it is put on the grid: this long after a step nothing can still belong to it. */
export const STAMP_SPREAD_S = 1e-4;

const ROLLING: LiveAxle = { use: 0, slip: 0, antiLock: ANTI_LOCK_OFF };

/**
 * The car where it begins to roll, `LEAD_IN_S` before the cue.
 * @param before what the axes said last; samples from before rolling may as well be given to `driveLiveCar`
 */
export function startLiveCar(zone: LiveZone, before: AxisValues = NOTHING_SAID): LiveCar {
  const { car, corner } = zone;
  const { approachSpeedMps: speedMps, gears } = corner;
  return {
    step: 0,
    sM: zone.rollFromM,
    speedMps,
    accelXMps2: 0,
    accelYMps2: 0,
    brakedFromM: null,
    transferN: 0,
    front: ROLLING,
    rear: ROLLING,
    gear: gears.approach,
    rpm: engineRpm(car.gearbox, gears.approach, speedMps),
    shift: null,
    workJ: { front: 0, rear: 0 },
    events: [],
    restingLevel: 0,
    held: heldInputs(before),
    waiting: NO_INPUTS,
  };
}

/**
 * The car driven on with what has come since the last call. Steps lie on a grid of 1 ms from the cue and are taken only
 * once nothing can come any more that belongs to them, so that any division of the samples into calls gives the same car,
 * to the bit, as `driveRecord` does.
 *
 * @param inputs samples since the last call, see `liveInputs`; later ones wait
 * @param untilS watermark, seconds from the cue: nothing stamped earlier will follow
 */
export function driveLiveCar(
  zone: LiveZone,
  car: LiveCar,
  inputs: LiveInputs,
  untilS: number,
): LiveCar {
  const drive = driveOf(zone, car, inputs);
  while (isDue(drive.step, untilS)) takeStep(drive);
  return finished(drive);
}

/** True where the step may be taken with a watermark. */
export function isDue(step: number, untilS: number): boolean {
  return stepTimeS(step) + STAMP_SPREAD_S <= untilS;
}

export function finished(drive: LiveDrive): LiveCar {
  const { gears, motion, model } = drive;
  const { gearbox } = model.car;
  const rpm = engineRpm(gearbox, gears.gear, motion.speedMps);
  const { shift } = gears;
  if (shift === null) return carOf(drive, rpm);
  const share = 1 - (shift.untilStep - drive.step) / shiftSteps(gearbox);
  const target = engineRpm(gearbox, shift.toGear, motion.speedMps);
  return carOf(drive, rpm + (target - rpm) * share);
}

import { engineRpm, type Gearbox, overRevSpeedMps, unmatchedShiftN } from '../car/gearbox.ts';
import { type LiveShift, STEP_S } from './live-car.ts';
import type { LiveDrive } from './live-drive.ts';
import { stepTimeS } from './step-time.ts';

/** Ends a shift that is through and begins the next one that is wanted. A press during a shift waits for its end. */
export function changeGear(drive: LiveDrive): void {
  endShift(drive);
  if (drive.gears.shift !== null) return;
  if (drive.zone.controls.paddles) shiftByPaddle(drive);
  else shiftForDriver(drive);
}

function endShift({ gears, step, events }: LiveDrive): void {
  const { shift } = gears;
  if (shift === null || step < shift.untilStep) return;
  const { untilStep: _, dragN: __, rearUse: ___, ...rest } = shift;
  events.push({
    ...rest,
    kind: shift.toGear < shift.fromGear ? 'downshift' : 'upshift',
    rearUse: gears.rearUse,
  });
  gears.gear = shift.toGear;
  gears.shift = null;
}

/** Takes the next press that is due. Presses from before the car rolled, and beyond the gears there are, do nothing. */
function shiftByPaddle(drive: LiveDrive): void {
  const { feed, gears, step, model } = drive;
  const { shifts } = feed.inputs;
  const timeS = stepTimeS(step);
  while (gears.shift === null) {
    const press = shifts[feed.nextShift];
    if (press === undefined || press.timeS > timeS) return;
    feed.nextShift++;
    const toGear = gears.gear + press.by;
    const isThere = toGear >= 1 && toGear <= model.car.gearbox.ratios.length;
    if (isThere && press.timeS >= stepTimeS(0)) begin(drive, toGear, true);
  }
}

/**
 * Without paddles the downshifts come at the target's places, but wait for the speed that the target had there or the one
 * that the engine stands.
 */
function shiftForDriver(drive: LiveDrive): void {
  const { gears, motion, zone, model } = drive;
  drive.feed.nextShift = drive.feed.inputs.shifts.length;
  for (const { fromGear, toGear, atM, speedMps } of zone.derived.zone.downshifts) {
    if (fromGear !== gears.gear || motion.sM < atM || drive.brakedFromM === null) continue;
    const mostMps = Math.max(speedMps, overRevSpeedMps(model.car.gearbox, toGear));
    if (motion.speedMps <= mostMps) begin(drive, toGear, false);
    return;
  }
}

function begin(drive: LiveDrive, toGear: number, byDriver: boolean): void {
  drive.gears.shift = shiftFrom(drive, toGear, byDriver);
  drive.gears.rearUse = 0;
}

/** How many steps a shift takes. */
export function shiftSteps({ shiftS }: Gearbox): number {
  return Math.max(1, Math.round(shiftS / STEP_S));
}

function shiftFrom(
  { gears, motion, step, model }: LiveDrive,
  toGear: number,
  byDriver: boolean,
): LiveShift {
  const { gearbox, engine } = model.car;
  const fromGear = gears.gear;
  const { speedMps } = motion;
  const rpm = engineRpm(gearbox, toGear, speedMps);
  const pull = { fromGear, toGear, speedMps, overS: gearbox.shiftS };
  return {
    fromGear,
    toGear,
    atM: motion.sM,
    atS: stepTimeS(step),
    untilStep: step + shiftSteps(gearbox),
    dragN: toGear < fromGear ? unmatchedShiftN(gearbox, engine, pull) : 0,
    rpm,
    overRev: rpm > gearbox.revLimitRpm,
    rearUse: 0,
    byDriver,
  };
}

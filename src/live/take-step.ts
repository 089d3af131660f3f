import { antiLockAfter } from '../car/anti-lock.ts';
import { radiansFromDegrees } from '../units.ts';
import { changeGear } from './change-gear.ts';
import { feedUntil } from './input-feed.ts';
import { STEP_S } from './live-car.ts';
import type { LiveDrive } from './live-drive.ts';
import { moveOn } from './motion.ts';
import { ratesAt } from './motion-rates.ts';
import { noteSlip } from './note-slip.ts';
import { stepTimeS } from './step-time.ts';

/**
 * The brake takes hold above the resting level by this much: half of the rise by which the score's onset rule knows
 * braking (3 %), which is the level to which that rule walks back. What a foot that is off leaves as noise stays below.
 */
const TAKES_HOLD_LEVEL = 0.015;
/** A foot that already brakes when the car begins to roll is no resting level. */
const MOST_RESTING_LEVEL = 0.05;

/**
 * One step of the explicit midpoint rule with the inputs held. Until the brake takes hold the car goes on at its approach
 * speed.
 */
export function takeStep(drive: LiveDrive): void {
  feedUntil(drive.feed, stepTimeS(drive.step));
  takeHold(drive);
  changeGear(drive);
  setAsked(drive);
  const { motion, middle, rates, middleRates, model, gears, asked } = drive;
  const { speedMps } = motion;
  ratesAt(model, gears, asked, motion, rates);
  if (drive.brakedFromM === null) {
    motion.sM += speedMps * STEP_S;
  } else {
    moveOn(motion, rates, STEP_S / 2, middle);
    ratesAt(model, gears, asked, middle, middleRates);
    moveOn(motion, middleRates, STEP_S, motion);
    answer(drive);
  }
  drive.accelXMps2 = (motion.speedMps - speedMps) / STEP_S;
  drive.step++;
}

function takeHold(drive: LiveDrive): void {
  const level = drive.feed.held.brake;
  if (drive.step === 0) drive.restingLevel = Math.min(MOST_RESTING_LEVEL, level);
  if (drive.brakedFromM === null && level > drive.restingLevel + TAKES_HOLD_LEVEL)
    drive.brakedFromM = drive.motion.sM;
}

function setAsked({
  asked,
  feed,
  zone,
  brakedFromM,
  restingLevel,
  frontAntiLock,
  rearAntiLock,
}: LiveDrive): void {
  const { held } = feed;
  const isCruising = brakedFromM === null;
  asked.level = isCruising ? 0 : held.brake;
  asked.throttle = zone.controls.throttle ? held.throttle : 0;
  // At constant speed engine and resistance are in balance: nothing is left for the axles to carry.
  asked.clutch = isCruising ? 1 : zone.controls.clutch ? held.clutch : 0;
  // A rig without a throttle: the program balances it once the foot is off the brake.
  asked.engineGives = !zone.controls.throttle && held.brake <= restingLevel + TAKES_HOLD_LEVEL;
  asked.steeringRad = zone.controls.steering ? radiansFromDegrees(held.steeringDeg) : null;
  asked.frontThrough = frontAntiLock.share;
  asked.rearThrough = rearAntiLock.share;
}

/** What follows from the step: anti-lock, the largest use during a shift, events. */
function answer(drive: LiveDrive): void {
  const { rates, gears, model } = drive;
  const { antiLock } = model.car;
  if (gears.shift !== null) gears.rearUse = Math.max(gears.rearUse, rates.rearUse);
  drive.frontAntiLock = antiLockAfter(
    antiLock,
    'front',
    drive.frontAntiLock,
    rates.frontUse,
    STEP_S,
  );
  drive.rearAntiLock = antiLockAfter(antiLock, 'rear', drive.rearAntiLock, rates.rearUse, STEP_S);
  noteSlip(drive);
}

import { overTime } from './over-time.ts';
import type { Target } from './target.ts';
import { travelOf } from './travel.ts';

/** What a coach reads off a target first. Times in seconds, rates as level per second, all positive. */
interface KeyNumbers {
  /** From a tenth to nine tenths of the peak on the way up. */
  readonly riseS: number;
  /** Start of release to brake off. */
  readonly releaseS: number;
  /** Between nine tenths and a tenth of the level at the start of release. */
  readonly meanReleaseRate: number;
  readonly steepestReleaseRate: number;
  /** Share of the braking time after turn-in; null without a turn-in. */
  readonly overlap: number | null;
  /** Deceleration at the peak that distance and speeds imply; null in the time domain. */
  readonly peakDecelerationMps2: number | null;
}

const STEP_S = 0.002;

/** Measured over time, whatever domain the target was written in. */
export function keyNumbers(target: Target): KeyNumbers {
  const timed = overTime(target);
  const { marks, level, peakLevel } = timed;
  const plateau = level.at(marks.startOfRelease);
  const highS = lastAbove(timed, 0.9 * plateau);
  const lowS = lastAbove(timed, 0.1 * plateau);
  return {
    riseS: firstAbove(timed, 0.9 * peakLevel) - firstAbove(timed, 0.1 * peakLevel),
    releaseS: marks.brakeOff - marks.startOfRelease,
    meanReleaseRate: (0.8 * plateau) / (lowS - highS),
    steepestReleaseRate: steepestRate(timed),
    overlap: overlapOf(timed),
    peakDecelerationMps2: peakDeceleration(target),
  };
}

function firstAbove({ level, marks }: Target, wanted: number): number {
  return crossing((timeS) => level.at(timeS) >= wanted, marks.rise, marks.peak);
}

function lastAbove({ level, marks }: Target, wanted: number): number {
  return crossing((timeS) => level.at(timeS) < wanted, marks.startOfRelease, marks.brakeOff);
}

/** Where a condition that is false at first and stays true once it is comes true, by bisection. */
function crossing(isPast: (timeS: number) => boolean, fromS: number, toS: number): number {
  let before = fromS;
  let past = toS;
  while (past - before > 1e-6) {
    const middle = (before + past) / 2;
    if (isPast(middle)) past = middle;
    else before = middle;
  }
  return past;
}

function steepestRate({ level, marks }: Target): number {
  let steepest = 0;
  for (let timeS = marks.startOfRelease; timeS < marks.brakeOff; timeS += STEP_S)
    steepest = Math.max(steepest, (level.at(timeS) - level.at(timeS + STEP_S)) / STEP_S);
  return steepest;
}

function overlapOf({ marks: { turnIn, rise, brakeOff } }: Target): number | null {
  if (turnIn === null) return null;
  return Math.min(1, Math.max(0, (brakeOff - turnIn) / (brakeOff - rise)));
}

function peakDeceleration({ domain, level, speeds, peakLevel }: Target): number | null {
  if (domain === 'time' || speeds === null) return null;
  return travelOf(level, speeds).fullScaleDecelerationMps2 * peakLevel;
}

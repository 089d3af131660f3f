import { type AdviceBands, NARROWEST_BANDS } from './advice-bands.ts';
import { type Fault, fault, making } from './fault.ts';
import type { KeyPointFault } from './key-point-fault.ts';
import type { Cause } from './rep-score.ts';

/** A cause in the driver's words, without a full stop; empty where it is within its band. */
export function describeCause(cause: Cause, bands: AdviceBands = NARROWEST_BANDS): string {
  return causeFault(cause, bands)?.words ?? '';
}

/** A cause as something to tell; null where it is within its band. */
export function causeFault(
  { kind, timingS, rateRatio: timeRatio, amountRatio }: Cause,
  bands: AdviceBands,
): Fault | null {
  if (kind === 'timing') return Math.abs(timingS) < bands.timingS ? null : timingFault(timingS);
  if (kind === 'rate') return Math.abs(timeRatio - 1) < bands.rate ? null : rateFault(timeRatio);
  if (kind === 'amount')
    return Math.abs(amountRatio - 1) < bands.amount ? null : amountFault(amountRatio);
  return fault('a different shape of release');
}

/** Where a release of another shape left its target most. */
export function momentFault({ point, errorS }: KeyPointFault): Fault {
  if (point === 'startOfRelease') return timingFault(errorS);
  const side = errorS > 0 ? 'late' : 'early';
  const off = `${milliseconds(errorS)} ${side}`;
  const makes = errorS > 0 ? 'slow' : 'fast';
  if (point === 'brakeOff') return making(makes, fault(`off the brake ${off}`, 'off', side));
  return point === 'halfRelease'
    ? making(makes, fault(`at half pressure ${off}`, 'half', side))
    : making(makes, fault(`down to the last tenth ${off}`, 'tenth', side));
}

function timingFault(timingS: number): Fault {
  const side = timingS > 0 ? 'late' : 'early';
  const told = fault(`released ${milliseconds(timingS)} ${side}`, 'eased', side);
  return making(timingS > 0 ? 'slow' : 'fast', told);
}

/** By time taken: a release that takes 20 % less time is 20 % too quick. */
function rateFault(timeRatio: number): Fault {
  const side = timeRatio < 1 ? 'quick' : 'slow';
  const told = fault(`${percent(timeRatio)} too ${side} off the brake`, 'eased', side);
  return making(timeRatio < 1 ? 'fast' : 'slow', told);
}

function amountFault(amountRatio: number): Fault {
  const side = amountRatio < 1 ? 'light' : 'heavy';
  const told = fault(`${percent(amountRatio)} too ${side} through the release`, 'too', side);
  return making(amountRatio < 1 ? 'fast' : 'slow', told);
}

const percent = (ratio: number): string => `${Math.round(100 * Math.abs(ratio - 1))} %`;
const milliseconds = (timeS: number): string => `${10 * Math.round(Math.abs(timeS) * 100)} ms`;

import { type AdviceBands, NARROWEST_BANDS } from './advice-bands.ts';
import type { KeyPointFault } from './key-point-fault.ts';
import type { Cause } from './rep-score.ts';

/** A cause in the driver's words, without a full stop; empty where it is within its band. */
export function describeCause(
  { kind, timingS, rateRatio, amountRatio }: Cause,
  bands: AdviceBands = NARROWEST_BANDS,
): string {
  if (kind === 'timing') return describeTiming(timingS, bands.timingS);
  if (kind === 'rate') return describeRate(rateRatio, bands.rate);
  if (kind === 'amount') return describeAmount(amountRatio, bands.amount);
  return 'a different shape of release';
}

/** Where a release of another shape left its target most, in the driver's words. */
export function describeFault({ point, errorS }: KeyPointFault): string {
  if (point === 'startOfRelease') return describeTiming(errorS, 0);
  const off = `${milliseconds(errorS)} ${errorS > 0 ? 'late' : 'early'}`;
  if (point === 'brakeOff') return `off the brake ${off}`;
  return `${point === 'halfRelease' ? 'at half pressure' : 'down to the last tenth'} ${off}`;
}

function describeTiming(timingS: number, band: number): string {
  if (Math.abs(timingS) < band) return '';
  return `released ${milliseconds(timingS)} ${timingS > 0 ? 'late' : 'early'}`;
}

/** By time taken: a release that takes 20 % less time is 20 % too quick. */
function describeRate(rateRatio: number, band: number): string {
  if (Math.abs(rateRatio - 1) < band) return '';
  return `${percent(rateRatio)} too ${rateRatio < 1 ? 'quick' : 'slow'} off the brake`;
}

function describeAmount(amountRatio: number, band: number): string {
  if (Math.abs(amountRatio - 1) < band) return '';
  return `${percent(amountRatio)} too ${amountRatio < 1 ? 'light' : 'heavy'} through the release`;
}

const percent = (ratio: number): string => `${Math.round(100 * Math.abs(ratio - 1))} %`;
const milliseconds = (timeS: number): string => `${10 * Math.round(Math.abs(timeS) * 100)} ms`;

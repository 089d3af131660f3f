import type { Cause } from './rep-score.ts';

/** Differences of pace below this are not worth a word. */
const RATE_BAND = 0.05;
/** A force has to change by about 7 % to be felt (Pang, Tan and Durlach, Perception & Psychophysics 49, 1991). */
const AMOUNT_BAND = 0.07;
/** What full marks allow for the rise; a foot is no better than that. */
const TIMING_BAND_S = 0.03;

/** A cause in the driver's words, without a full stop; empty where it is too small to be felt. */
export function describeCause({ kind, timingS, rateRatio, amountRatio }: Cause): string {
  if (kind === 'timing') return describeTiming(timingS);
  if (kind === 'rate') return describeRate(rateRatio);
  if (kind === 'amount') return describeAmount(amountRatio);
  return 'a different shape of release';
}

function describeTiming(timingS: number): string {
  if (Math.abs(timingS) < TIMING_BAND_S) return '';
  const ms = 10 * Math.round(Math.abs(timingS) * 100);
  return `released ${ms} ms ${timingS > 0 ? 'late' : 'early'}`;
}

/** By time taken: a release that takes 20 % less time is 20 % too quick. */
function describeRate(rateRatio: number): string {
  if (Math.abs(rateRatio - 1) < RATE_BAND) return '';
  return `${percent(rateRatio)} too ${rateRatio < 1 ? 'quick' : 'slow'} off the brake`;
}

function describeAmount(amountRatio: number): string {
  if (Math.abs(amountRatio - 1) < AMOUNT_BAND) return '';
  return `${percent(amountRatio)} too ${amountRatio < 1 ? 'light' : 'heavy'} through the release`;
}

const percent = (ratio: number): string => `${Math.round(100 * Math.abs(ratio - 1))} %`;

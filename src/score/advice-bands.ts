import { standardDeviation } from '../consistency/standard-deviation.ts';
import type { RepOutcome, RepScore } from './rep-score.ts';
import { PEAK_LIMITS, RISE_LIMITS_S } from './score-version.ts';
import { slowestSpeedShare } from './slowest-speed.ts';

/** How far off each thing may be before it is worth a word. */
export interface AdviceBands {
  readonly timingS: number;
  /** Of the length of the release, as a share. */
  readonly rate: number;
  /** Of the pressure through the release, as a share. */
  readonly amount: number;
  /** Of the peak, as a share. */
  readonly peak: number;
  readonly riseS: number;
  /** Of the target's speed at the slowest point, as a share; only the live car has one. */
  readonly slowestSpeed: number;
}

/**
 * What anybody is told about: a force has to change by about 7 % to be felt (Pang, Tan and Durlach, Perception &
 * Psychophysics 49, 1991); for the others what full marks allow, a foot is no better than that. A speed profile at the
 * limit meets a real entry within 2 to 4 %: nearer than 5 % the target itself is not known.
 */
export const NARROWEST_BANDS: AdviceBands = {
  timingS: 0.03,
  rate: 0.05,
  amount: 0.07,
  peak: PEAK_LIMITS.full,
  riseS: RISE_LIMITS_S.full,
  slowestSpeed: 0.05,
};

/** Reps that a band looks back on. */
export const BAND_REPS = 20;
/** The deviation of ten reps is known within a factor of 1.8 upwards (95 %, chi-square). */
const LEAST_REPS = 10;
/** A rep has to be further out than this many of the driver's own standard deviations. */
const DEVIATIONS = 1.5;
/** With so large a share of the last reps in band, the band shrinks to hold just that share. */
const NARROWING_SHARE = 0.8;

/**
 * Bands that widen with the driver's own spread: correcting what is only noise makes it worse (van Beers, Neuron 63,
 * 2009), and advice outside a band is kept for longer than advice after every rep. They shrink again as the driver
 * gets better, down to what can be felt.
 *
 * @param recent the driver's newest reps of this target, newest last; without ten of them the narrowest bands
 */
export function adviceBands(recent: readonly RepOutcome[]): AdviceBands {
  const scores = recent.filter((rep): rep is RepScore => rep.kind === 'scored').slice(-BAND_REPS);
  const band = (name: keyof AdviceBands): number =>
    ownBand(
      scores.map(MEASURES[name]).filter((value) => value !== null),
      NARROWEST_BANDS[name],
    );
  return {
    timingS: band('timingS'),
    rate: band('rate'),
    amount: band('amount'),
    peak: band('peak'),
    riseS: band('riseS'),
    slowestSpeed: band('slowestSpeed'),
  };
}

/** What is measured in every rep, not only where it was named as the cause. */
const MEASURES: Readonly<Record<keyof AdviceBands, (score: RepScore) => number | null>> = {
  timingS: ({ keyPointErrorsS }) => keyPointErrorsS.startOfRelease,
  rate: releaseLengthError,
  // how heavy a rep was as a whole shows at its peak
  amount: ({ peakError }) => peakError,
  peak: ({ peakError }) => peakError,
  riseS: ({ riseErrorS }) => riseErrorS,
  slowestSpeed: ({ live }) => (live == null ? null : slowestSpeedShare(live)),
};

/** Length of the release to its last tenth over the target's, less 1. */
function releaseLengthError({ keyPoints, keyPointErrorsS }: RepScore): number | null {
  const [from, to] = [keyPoints.startOfReleaseS, keyPoints.finalReleaseS];
  const [fromError, toError] = [keyPointErrorsS.startOfRelease, keyPointErrorsS.finalRelease];
  if (from === null || to === null || fromError === null || toError === null) return null;
  const longer = toError - fromError;
  const targetS = to - from - longer;
  return targetS > 0 ? longer / targetS : null;
}

function ownBand(values: readonly number[], narrowest: number): number {
  if (values.length < LEAST_REPS) return narrowest;
  const wide = Math.max(narrowest, DEVIATIONS * standardDeviation(values)!);
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  const most = sizes[Math.ceil(NARROWING_SHARE * sizes.length) - 1]!;
  return most <= wide ? Math.max(narrowest, most) : wide;
}

import { type AdviceBands, NARROWEST_BANDS } from './advice-bands.ts';
import { describeCause, describeFault } from './describe-cause.ts';
import { describeGrip, type SpokenUnits, type Told, toldOfLive } from './describe-live.ts';
import { keyPointFault } from './key-point-fault.ts';
import type { LiveMeasures } from './live-measures.ts';
import type { NoRepReason, RepOutcome, RepScore } from './rep-score.ts';
import {
  PEAK_LIMITS,
  RATE_RATIO_LIMITS,
  REAPPLIED_LIMITS,
  RISE_LIMITS_S,
} from './score-version.ts';

const NO_REP: Readonly<Record<NoRepReason, string>> = {
  'never braked': 'no braking was seen',
  'peak below a tenth of the target': 'hardly any pressure',
  'too few samples': 'too little was recorded to score',
  'wheel never turned in': 'the wheel never turned in, so nothing was asked for',
  'braked too late': 'braked too late to make the corner',
  'stopped before the release': 'stopped before there was anything to release',
};

/** Points a part has to cost before it is spoken of: even a skilled foot differs by more from rep to rep. */
const TOLD_FROM_POINTS = 4;

/**
 * One thing to tell the driver about a rep: what was wrong with the part that cost most points. Empty where nothing
 * was large enough to be felt: correcting noise makes it worse (van Beers, Neuron 63, 2009).
 *
 * @param bands what is within them is not worth a word; those of the driver by `adviceBands`
 * @param units of speeds; places are told in metres
 */
export function describeOutcome(
  outcome: RepOutcome,
  bands: AdviceBands = NARROWEST_BANDS,
  units: SpokenUnits = 'metric',
): string {
  if (outcome.kind === 'no-rep') return NO_REP[outcome.reason];
  const { pointsLost, live } = outcome;
  const parts: readonly Told[] = [
    { lost: pointsLost.release, words: describeRelease(outcome, bands) },
    { lost: pointsLost.hit, words: describeHit(outcome, bands) },
    { lost: pointsLost.smooth, words: describeSmooth(outcome) },
    ...(isLive(live) ? toldOfLive(live, pointsLost, units) : []),
  ];
  const told = parts.filter(({ lost, words }) => lost >= TOLD_FROM_POINTS && words !== '');
  return [...told].sort((a, b) => b.lost - a.lost)[0]?.words ?? '';
}

/** A score that was stored before there was a live car says nothing of it at all. */
const isLive = (live: LiveMeasures | null | undefined): live is LiveMeasures => live != null;

function describeRelease(outcome: RepScore, bands: AdviceBands): string {
  const { flags, cause } = outcome;
  if (flags.includes('not-released')) return 'the brake was never fully released';
  if (cause === null) return '';
  return (cause.kind === 'shape' && describeShape(outcome, bands)) || describeCause(cause, bands);
}

/**
 * A shape says nothing a foot can do. What bent it does, where that was enough to cost points itself; else the moment at
 * which it was furthest off.
 */
function describeShape(outcome: RepScore, bands: AdviceBands): string {
  const bent = describeSmooth(outcome);
  if (outcome.pointsLost.smooth >= TOLD_FROM_POINTS && bent !== '') return bent;
  const fault = keyPointFault(outcome, bands.timingS);
  return fault === null ? bent : describeFault(fault);
}

function describeHit({ peakError, riseErrorS }: RepScore, bands: AdviceBands): string {
  const peakShare = Math.abs(peakError) / PEAK_LIMITS.none;
  const riseShare = Math.abs(riseErrorS) / RISE_LIMITS_S.none;
  if (peakShare >= riseShare && Math.abs(peakError) > bands.peak) {
    return `hit ${Math.round(100 * Math.abs(peakError))} % too ${peakError > 0 ? 'hard' : 'light'}`;
  }
  if (Math.abs(riseErrorS) <= bands.riseS) return '';
  const ms = 10 * Math.round(Math.abs(riseErrorS) * 100);
  return `${ms} ms too ${riseErrorS > 0 ? 'slow' : 'quick'} to the peak`;
}

function describeSmooth({ reapplied, reapplications, rateRatio, live, parts }: RepScore): string {
  const grip = isLive(live) ? describeGrip(live, parts.smooth) : '';
  if (grip !== '') return grip;
  if (reapplied > REAPPLIED_LIMITS.full && reapplications > 0) {
    return `back on the brake ${times(reapplications)} during the release`;
  }
  if (rateRatio === null || rateRatio <= RATE_RATIO_LIMITS.full) return '';
  return `released in a step, ${rateRatio.toFixed(1)} times as steep as the target`;
}

function times(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}

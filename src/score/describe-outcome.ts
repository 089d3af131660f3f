import { type AdviceBands, NARROWEST_BANDS } from './advice-bands.ts';
import { causeFault, momentFault } from './describe-cause.ts';
import { gripFault, type SpokenUnits, type Told, toldOfLive } from './describe-live.ts';
import { type Fault, fault } from './fault.ts';
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
 * One thing to tell the driver about a rep: what was wrong with the part that cost most points. Null where nothing was
 * large enough to be felt: correcting noise makes it worse (van Beers, Neuron 63, 2009).
 *
 * @param bands what is within them is not worth a word; those of the driver by `adviceBands`
 * @param units of speeds; places are told in metres
 */
export function faultOf(
  outcome: RepOutcome,
  bands: AdviceBands = NARROWEST_BANDS,
  units: SpokenUnits = 'metric',
): Fault | null {
  if (outcome.kind === 'no-rep') return fault(NO_REP[outcome.reason]);
  const { pointsLost, live } = outcome;
  const parts: readonly Told[] = [
    { lost: pointsLost.release, fault: releaseFault(outcome, bands) },
    { lost: pointsLost.hit, fault: hitFault(outcome, bands) },
    { lost: pointsLost.smooth, fault: smoothFault(outcome) },
    ...(isLive(live) ? toldOfLive(live, pointsLost, units) : []),
  ];
  const told = parts.filter(({ lost, fault: found }) => lost >= TOLD_FROM_POINTS && found !== null);
  return [...told].sort((a, b) => b.lost - a.lost)[0]?.fault ?? null;
}

/** The words of `faultOf`; empty where there is nothing to tell. */
export function describeOutcome(
  outcome: RepOutcome,
  bands: AdviceBands = NARROWEST_BANDS,
  units: SpokenUnits = 'metric',
): string {
  return faultOf(outcome, bands, units)?.words ?? '';
}

/** A score that was stored before there was a live car says nothing of it at all. */
const isLive = (live: LiveMeasures | null | undefined): live is LiveMeasures => live != null;

function releaseFault(outcome: RepScore, bands: AdviceBands): Fault | null {
  const { flags, cause } = outcome;
  if (flags.includes('not-released'))
    return fault('the brake was never fully released', 'not', 'off');
  if (cause === null) return null;
  return (cause.kind === 'shape' ? shapeFault(outcome, bands) : null) ?? causeFault(cause, bands);
}

/**
 * A shape says nothing a foot can do. What bent it does, where that was enough to cost points itself; else the moment at
 * which it was furthest off.
 */
function shapeFault(outcome: RepScore, bands: AdviceBands): Fault | null {
  const bent = smoothFault(outcome);
  if (outcome.pointsLost.smooth >= TOLD_FROM_POINTS && bent !== null) return bent;
  const moment = keyPointFault(outcome, bands.timingS);
  return moment === null ? bent : momentFault(moment);
}

function hitFault({ peakError, riseErrorS }: RepScore, bands: AdviceBands): Fault | null {
  const peakShare = Math.abs(peakError) / PEAK_LIMITS.none;
  const riseShare = Math.abs(riseErrorS) / RISE_LIMITS_S.none;
  if (peakShare >= riseShare && Math.abs(peakError) > bands.peak) {
    const words = `hit ${Math.round(100 * Math.abs(peakError))} % too ${peakError > 0 ? 'hard' : 'light'}`;
    return fault(words, 'peak', peakError > 0 ? 'high' : 'low');
  }
  if (Math.abs(riseErrorS) <= bands.riseS) return null;
  const ms = 10 * Math.round(Math.abs(riseErrorS) * 100);
  const words = `${ms} ms too ${riseErrorS > 0 ? 'slow' : 'quick'} to the peak`;
  return fault(words, 'peak', riseErrorS > 0 ? 'late' : 'early');
}

function smoothFault(outcome: RepScore): Fault | null {
  const { reapplied, reapplications, rateRatio, live, parts } = outcome;
  const grip = isLive(live) ? gripFault(live, parts.smooth) : null;
  if (grip !== null) return grip;
  if (reapplied > REAPPLIED_LIMITS.full && reapplications > 0) {
    return fault(`back on the brake ${times(reapplications)} during the release`, 'back', 'on');
  }
  if (rateRatio === null || rateRatio <= RATE_RATIO_LIMITS.full) return null;
  const words = `released in a step, ${rateRatio.toFixed(1)} times as steep as the target`;
  return fault(words, 'in a', 'step');
}

function times(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}

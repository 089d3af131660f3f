import { type AdviceBands, NARROWEST_BANDS } from './advice-bands.ts';
import { causeFault, momentFault } from './describe-cause.ts';
import { brakePointFault, gripFault, speedFault, type Told, toldOfLive } from './describe-live.ts';
import { type Fault, fault, first } from './fault.ts';
import { hitDifference, hitFault } from './hit-fault.ts';
import { keyPointFault } from './key-point-fault.ts';
import type { LiveMeasures } from './live-measures.ts';
import type { NoRepReason, RepOutcome, RepScore } from './rep-score.ts';
import { RATE_RATIO_LIMITS, REAPPLIED_LIMITS } from './score-version.ts';
import { type SpokenUnits, speedOff } from './slowest-speed.ts';

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
 * large enough to be felt: correcting noise makes it worse (van Beers, Neuron 63, 2009). A corner entered far too fast
 * or too slow comes before details of the foot: what came of a movement, then the one thing about it that may have led
 * there.
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
  const differs = hitDifference(outcome, bands);
  const hit = differs && hitFault(differs);
  const parts: readonly Told[] = [
    { lost: pointsLost.release, fault: releaseFault(outcome, bands) },
    { lost: pointsLost.hit, fault: hit },
    { lost: pointsLost.smooth, fault: smoothFault(outcome) },
    ...(isLive(live) ? toldOfLive(live, pointsLost, bands, units) : []),
  ];
  const told = parts
    .filter(({ lost }) => lost >= TOLD_FROM_POINTS)
    .toSorted((a, b) => b.lost - a.lost)
    .flatMap(({ fault: found }) => found ?? []);
  const isFar = isLive(live) && speedOff(live, bands.slowestSpeed) === 'far';
  if (!isFar) return told[0] ?? null;
  return speedFirst(speedFault(live, units), [
    ...told,
    ...brakedOff(live),
    ...(hit === null ? [] : [hit]),
  ]);
}

/** A brake point that costs hardly any points still moves the speed, where it is further off than a foot can time it. */
function brakedOff(live: LiveMeasures): readonly Fault[] {
  const told = brakePointFault(live);
  const isOff = Math.abs(live.brakePointErrorS) >= NARROWEST_BANDS.timingS;
  return isOff && told !== null ? [told] : [];
}

/** A speed and, of what was told else, the dearest thing that does not lead the other way. */
function speedFirst(speed: Fault, told: readonly Fault[]): Fault {
  if (told[0]?.isFirst === true) return told[0];
  const why = told.find(({ makes }) => makes === null || makes === speed.makes);
  return why === undefined ? speed : { ...speed, words: `${speed.words}, ${why.words}` };
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
  const { flags, cause, rateRatio } = outcome;
  if (flags.includes('not-released'))
    return first(fault('the brake was never fully released', 'not', 'off'));
  if (cause === null) return null;
  // so steep that it was no release: its time or weight would name what is not there
  if (rateRatio !== null && rateRatio >= RATE_RATIO_LIMITS.none) return stepFault(rateRatio);
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

function smoothFault(outcome: RepScore): Fault | null {
  const { reapplied, reapplications, rateRatio, live, parts } = outcome;
  const grip = isLive(live) ? gripFault(live, parts.smooth) : null;
  if (grip !== null) return grip;
  if (reapplied > REAPPLIED_LIMITS.full && reapplications > 0) {
    return fault(`back on the brake ${times(reapplications)} during the release`, 'back', 'on');
  }
  if (rateRatio === null || rateRatio <= RATE_RATIO_LIMITS.full) return null;
  return stepFault(rateRatio);
}

function stepFault(steepestRatio: number): Fault {
  const words = `released in a step, ${steepestRatio.toFixed(1)} times as steep as the target`;
  return fault(words, 'in a', 'step');
}

function times(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}

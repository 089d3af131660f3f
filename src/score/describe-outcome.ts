import type { TextUnits } from '../unit-text.ts';
import { type AdviceBands, NARROWEST_BANDS } from './advice-bands.ts';
import { causeFault, momentFault } from './describe-cause.ts';
import { brakePointFault, speedFault, type Told, toldOfLive } from './describe-live.ts';
import { type Fault, fault, first } from './fault.ts';
import { hitDifference, hitFault } from './hit-fault.ts';
import { keyPointFault } from './key-point-fault.ts';
import type { LiveMeasures } from './live-measures.ts';
import { NO_REP_WORDS } from './no-rep-words.ts';
import { orderTold, type ToldFault } from './order-told.ts';
import type { RepOutcome, RepScore } from './rep-score.ts';
import { speedOff } from './slowest-speed.ts';
import { isStep, smoothFault, stepFault } from './smooth-fault.ts';

/** Points a part has to cost before it is spoken of: even a skilled foot differs by more from rep to rep. */
const TOLD_FROM_POINTS = 4;

/**
 * One thing to tell the driver about a rep: what was wrong with the part that cost most points. Null where nothing was
 * large enough to be felt: correcting noise makes it worse (van Beers, Neuron 63, 2009). A corner entered far too fast
 * or too slow comes before details of the foot: what came of a movement, then the one thing about it that may have led
 * there.
 *
 * @param bands what is within them is not worth a word; those of the driver by `adviceBands`
 * @param units of speeds and places
 */
export function faultOf(
  outcome: RepOutcome,
  bands: AdviceBands = NARROWEST_BANDS,
  units: TextUnits = 'metric',
): Fault | null {
  if (outcome.kind === 'no-rep') return fault(NO_REP_WORDS[outcome.reason]);
  const { live } = outcome;
  const isFar = live != null && speedOff(live, bands.slowestSpeed) === 'far';
  const told = partsOf(outcome, bands, units).filter(({ lost }) => lost >= TOLD_FROM_POINTS);
  const [before, behind] = isFar
    ? orderTold([...told, ...whyFar(outcome, live, bands, units)], {
        lost: 0,
        fault: speedFault(live, units),
      })
    : orderTold(told, null);
  if (before === undefined || behind === undefined) return before?.fault ?? null;
  return { ...before.fault, words: `${before.fault.words}, ${behind.fault.words}` };
}

/** What was wrong with each part of a rep, and what it cost. */
function partsOf(outcome: RepScore, bands: AdviceBands, units: TextUnits): readonly ToldFault[] {
  const { pointsLost, live } = outcome;
  const differs = hitDifference(outcome, bands);
  const parts: readonly Told[] = [
    { lost: pointsLost.release, fault: releaseFault(outcome, bands, units) },
    { lost: pointsLost.hit, fault: differs && hitFault(differs) },
    { lost: pointsLost.smooth, fault: smoothFault(outcome, units) },
    ...(live == null ? [] : toldOfLive(live, pointsLost, bands, units)),
  ];
  return parts.flatMap(({ lost, fault: found }) => (found === null ? [] : { lost, fault: found }));
}

/**
 * What may have made a speed though it costs hardly any points: a brake point further off than a foot can time it, and a
 * hit outside its band.
 */
function whyFar(
  outcome: RepScore,
  live: LiveMeasures,
  bands: AdviceBands,
  units: TextUnits,
): readonly ToldFault[] {
  const isOff = Math.abs(live.brakePointErrorS) >= NARROWEST_BANDS.timingS;
  const braked = isOff ? brakePointFault(live, units) : null;
  const differs = hitDifference(outcome, bands);
  return [braked, differs && hitFault(differs)].flatMap((found) =>
    found === null ? [] : { lost: 0, fault: found },
  );
}

/** The words of `faultOf`; empty where there is nothing to tell. */
export function describeOutcome(
  outcome: RepOutcome,
  bands: AdviceBands = NARROWEST_BANDS,
  units: TextUnits = 'metric',
): string {
  return faultOf(outcome, bands, units)?.words ?? '';
}

function releaseFault(outcome: RepScore, bands: AdviceBands, units: TextUnits): Fault | null {
  const { flags, cause, rateRatio } = outcome;
  if (flags.includes('not-released'))
    return first(fault('the brake was never fully released', 'not', 'off'));
  if (cause === null) return null;
  // so steep that it was no release: its time or weight would name what is not there
  if (rateRatio !== null && isStep(rateRatio)) return stepFault(rateRatio);
  return (
    (cause.kind === 'shape' ? shapeFault(outcome, bands, units) : null) ?? causeFault(cause, bands)
  );
}

/**
 * A shape says nothing a foot can do. What bent it does, where that was enough to cost points itself; else the moment at
 * which it was furthest off.
 */
function shapeFault(outcome: RepScore, bands: AdviceBands, units: TextUnits): Fault | null {
  const bent = smoothFault(outcome, units);
  if (outcome.pointsLost.smooth >= TOLD_FROM_POINTS && bent !== null) return bent;
  const moment = keyPointFault(outcome, bands.timingS);
  return moment === null ? bent : momentFault(moment);
}

import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { type AlignedRep, alignRep } from './aligned-rep.ts';
import { findCause } from './cause.ts';
import { lastFallBelow } from './crossings.ts';
import { keyPointErrors, keyPointTimes, riseError } from './key-points.ts';
import { type Reapplications, reapplications } from './reapplications.ts';
import { releaseErrors } from './release-errors.ts';
import { releaseSpeed, steepestFall } from './release-rate.ts';
import type { Cause, NoRep, NoRepReason, RepOutcome, RepScore } from './rep-score.ts';
import { type RepSignal, repSignal } from './rep-signal.ts';
import { hasGap, scoreFlags } from './score-flags.ts';
import { pointsLost, scoreOf, scoreParts } from './score-parts.ts';
import {
  LEAST_PEAK_SHARE,
  REAPPLICATION_END_SHARE,
  REAPPLICATION_SHARE,
  RELEASE_FULL_LEVEL,
  SCORE_VERSION,
} from './score-version.ts';
import { RATE_HZ } from './scoring-filter.ts';
import { sideMeasures } from './side-measures.ts';
import { spectralArcLength } from './smoothness.ts';
import { type TargetReference, targetReference } from './target-reference.ts';

/**
 * Scores one finished rep against a target over time. A pure function of the record, so that a rep scores the same
 * live, replayed, read back from the history or from a CSV file, however its samples were chunked.
 *
 * @throws Problem for a target over distance or one that never rises, and for a record of more than ten minutes.
 */
export function scoreRep(record: RepRecord, target: Target): RepOutcome {
  const reference = targetReference(target);
  const rep = repSignal(record);
  if (rep === null) return noRep('too few samples', record, null);
  if (rep.onset === null) return noRep('never braked', record, rep);
  const aligned = alignRep(rep, rep.onset, reference);
  if (aligned.keys.peakLevel < LEAST_PEAK_SHARE * target.peakLevel) {
    return noRep('peak below a tenth of the target', record, rep);
  }
  return score(record, rep, rep.onset, aligned, reference);
}

function noRep(reason: NoRepReason, record: RepRecord, rep: RepSignal | null): NoRep {
  const flags = hasGap(record, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)
    ? (['gap'] as const)
    : [];
  const side = rep === null ? null : sideMeasures(record, rep, null, null);
  return { kind: 'no-rep', version: SCORE_VERSION, score: 0, reason, side, flags };
}

function score(
  record: RepRecord,
  rep: RepSignal,
  onset: number,
  aligned: AlignedRep,
  reference: TargetReference,
): RepScore {
  const { keys } = aligned;
  const keyPoints = keyPointTimes(aligned);
  const flags = scoreFlags(record, rep, onset, keyPoints, aligned.timeS(reference.release.to));
  const rated = !flags.includes('gap');
  const reapplied = countReapplications(aligned, reference, record.brakeStepLevel);
  const errors = {
    ...releaseErrors(aligned.levels, reference),
    onOffErrorLevel: reference.onOffErrorLevel,
    peakError: keys.peakLevel / reference.keys.peakLevel - 1,
    riseErrorS: riseError(keys, reference.keys),
    reapplications: reapplied.count,
    reapplied: reapplied.share,
    rateRatio: rated ? rateRatio(aligned, reference) : null,
  };
  const parts = scoreParts(errors);
  return {
    kind: 'scored',
    version: SCORE_VERSION,
    score: scoreOf(parts),
    parts,
    pointsLost: pointsLost(parts),
    ...errors,
    smoothnessDifference: rated ? smoothnessDifference(aligned, reference) : null,
    keyPoints,
    keyPointErrorsS: keyPointErrors(keys, reference.keys),
    cause: errors.releaseErrorLevel > RELEASE_FULL_LEVEL ? causeOf(aligned, reference) : null,
    side: sideMeasures(record, rep, keyPoints, riseTime(aligned, reference)),
    live: null,
    flags,
  };
}

/** When the target's rise began on the rep's clock: the onset less what the estimator is late by on the target. */
function riseTime(aligned: AlignedRep, { target, originS }: TargetReference): number {
  return aligned.timeS((target.marks.rise - originS) * RATE_HZ);
}

function countReapplications(
  { levels, keys }: AlignedRep,
  { target }: TargetReference,
  stepLevel: number,
): Reapplications {
  const last = levels.length - 1;
  const end = lastFallBelow(levels, REAPPLICATION_END_SHARE * target.peakLevel, keys.peak, last);
  const hysteresis = Math.max(REAPPLICATION_SHARE * target.peakLevel, 3 * stepLevel);
  return reapplications(levels, { from: keys.peak, to: end ?? last }, hysteresis);
}

function rateRatio({ levels, keys }: AlignedRep, reference: TargetReference): number | null {
  if (!(reference.steepestFall > 0)) return null;
  const window = { from: keys.peak, to: reference.release.to };
  return steepestFall(levels, window) / reference.steepestFall;
}

function smoothnessDifference(
  { levels }: AlignedRep,
  { smoothness, smoothnessWindow }: TargetReference,
): number | null {
  const own = spectralArcLength(releaseSpeed(levels, smoothnessWindow), RATE_HZ);
  return own === null || smoothness === null ? null : own - smoothness;
}

function causeOf({ levels }: AlignedRep, reference: TargetReference): Cause {
  return findCause({
    rep: levels,
    target: reference.levels,
    ...reference.release,
    mark: reference.guide.mark,
    peak: reference.keys.peak,
    rateHz: RATE_HZ,
  });
}

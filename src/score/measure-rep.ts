import type { RepRecord } from '../trace/rep-record.ts';
import type { AlignedRep } from './aligned-rep.ts';
import { findCause } from './cause.ts';
import { lastFallBelow } from './crossings.ts';
import { keyPointErrors, keyPointTimes, riseError } from './key-points.ts';
import { type Reapplications, reapplications } from './reapplications.ts';
import { releaseErrors } from './release-errors.ts';
import { releaseSpeed, steepestFall } from './release-rate.ts';
import type { Cause, RepScore } from './rep-score.ts';
import type { RepSignal } from './rep-signal.ts';
import { scoreFlags } from './score-flags.ts';
import {
  REAPPLICATION_END_SHARE,
  REAPPLICATION_SHARE,
  RELEASE_FULL_LEVEL,
} from './score-version.ts';
import { RATE_HZ } from './scoring-filter.ts';
import { sideMeasures } from './side-measures.ts';
import { spectralArcLength } from './smoothness.ts';
import type { TargetReference } from './target-reference.ts';

/** All that is measured of a rep before points are given. */
export type RepMeasures = Omit<
  RepScore,
  'kind' | 'version' | 'score' | 'parts' | 'pointsLost' | 'live'
>;

/** Measures a rep that has an onset, laid on its target. */
export function measureRep(
  record: RepRecord,
  rep: RepSignal & { readonly onset: number },
  aligned: AlignedRep,
  reference: TargetReference,
): RepMeasures {
  const { keys } = aligned;
  const keyPoints = keyPointTimes(aligned);
  const flags = scoreFlags(record, rep, rep.onset, keyPoints, aligned.timeS(reference.release.to));
  const rated = !flags.includes('gap');
  const reapplied = countReapplications(aligned, reference, record.brakeStepLevel);
  const errors = releaseErrors(aligned.levels, reference);
  return {
    ...errors,
    onOffErrorLevel: reference.onOffErrorLevel,
    peakError: keys.peakLevel / reference.keys.peakLevel - 1,
    riseErrorS: riseError(keys, reference.keys),
    reapplications: reapplied.count,
    reapplied: reapplied.share,
    rateRatio: rated ? steepestRatio(aligned, reference) : null,
    smoothnessDifference: rated ? smoothnessDifference(aligned, reference) : null,
    keyPoints,
    keyPointErrorsS: keyPointErrors(keys, reference.keys),
    cause: errors.releaseErrorLevel > RELEASE_FULL_LEVEL ? causeOf(aligned, reference) : null,
    side: sideMeasures(record, rep, keyPoints, riseTime(aligned, reference)),
    flags,
  };
}

/** When the target's rise began on the rep's clock: the onset less what the estimator is late by on the target. */
function riseTime(aligned: AlignedRep, { target, originS }: TargetReference): number {
  return aligned.timeS((target.marks.rise - originS) * RATE_HZ);
}

/** Re-applications of a rep against its target, or of the target against itself: some corners ask for one. */
export function countReapplications(
  { levels, keys }: Pick<AlignedRep, 'levels' | 'keys'>,
  { target }: TargetReference,
  stepLevel: number,
): Reapplications {
  const last = levels.length - 1;
  const end = lastFallBelow(levels, REAPPLICATION_END_SHARE * target.peakLevel, keys.peak, last);
  const hysteresis = Math.max(REAPPLICATION_SHARE * target.peakLevel, 3 * stepLevel);
  return reapplications(levels, { from: keys.peak, to: end ?? last }, hysteresis);
}

function steepestRatio({ levels, keys }: AlignedRep, reference: TargetReference): number | null {
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

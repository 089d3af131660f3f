import { describeOutcome } from '../score/describe-outcome.ts';
import type { Cause, KeyPoints, RepOutcome, RepScore, SideMeasures } from '../score/rep-score.ts';
import { liveJson } from './live-json.ts';

/**
 * An outcome as `--json` prints it: field names end in their unit, levels and shares are 0..1, what the rep or the rig
 * does not offer is null.
 */
export function outcomeJson(outcome: RepOutcome): object {
  const { kind, score, version, side, flags } = outcome;
  return {
    outcome: kind,
    score,
    score_version: version,
    score_provisional: true,
    sentence: describeOutcome(outcome),
    ...(outcome.kind === 'no-rep' ? { reason: outcome.reason } : scoredJson(outcome)),
    side: side === null ? null : sideJson(side),
    flags,
  };
}

function scoredJson(score: RepScore): object {
  const { parts, pointsLost, keyPointErrorsS } = score;
  return {
    release_share: parts.release,
    hit_share: parts.hit,
    smooth_share: parts.smooth,
    brake_point_share: parts.brakePoint ?? null,
    release_lost_points: pointsLost.release,
    hit_lost_points: pointsLost.hit,
    smooth_lost_points: pointsLost.smooth,
    brake_point_lost_points: pointsLost.brakePoint ?? null,
    release_error_level: score.releaseErrorLevel,
    average_error_level: score.averageErrorLevel,
    on_off_error_level: score.onOffErrorLevel,
    in_corridor_share: score.inCorridor,
    peak_error_share: score.peakError,
    rise_error_s: score.riseErrorS,
    reapplications_count: score.reapplications,
    reapplied_share: score.reapplied,
    rate_ratio: score.rateRatio,
    smoothness_difference: score.smoothnessDifference,
    start_of_release_error_s: keyPointErrorsS.startOfRelease,
    half_release_error_s: keyPointErrorsS.halfRelease,
    final_release_error_s: keyPointErrorsS.finalRelease,
    brake_off_error_s: keyPointErrorsS.brakeOff,
    key_points: keyPointsJson(score.keyPoints),
    cause: score.cause === null ? null : causeJson(score.cause),
    live: score.live == null ? null : liveJson(score.live),
  };
}

function keyPointsJson(keys: KeyPoints): object {
  return {
    onset_s: keys.onsetS,
    near_peak_s: keys.nearPeakS,
    peak_s: keys.peakS,
    peak_level: keys.peakLevel,
    start_of_release_s: keys.startOfReleaseS,
    half_release_s: keys.halfReleaseS,
    final_release_s: keys.finalReleaseS,
    brake_off_s: keys.brakeOffS,
  };
}

function causeJson({ kind, timingS, rateRatio, amountRatio, explained }: Cause): object {
  return {
    kind,
    timing_s: timingS,
    rate_ratio: rateRatio,
    amount_ratio: amountRatio,
    explained_share: explained,
  };
}

function sideJson(side: SideMeasures): object {
  return {
    start_error_s: side.startErrorS,
    lift_to_hit_s: side.liftToHitS,
    overlap_s: side.overlapS,
    resting_level: side.restingLevel,
    shift_ripple_level: side.shiftRippleLevel,
    steering_lag_s: side.steeringLagS,
  };
}

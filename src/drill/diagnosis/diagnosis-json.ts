import type { Interval } from '../../consistency/interval.ts';
import type { BlockDiagnosis, Overlay, PhaseDiagnosis } from './block-diagnosis.ts';
import type { FirstRepLoss } from './first-rep-loss.ts';
import type { FeedbackFigures, ShownHidden } from './shown-hidden.ts';
import type { StartError } from './start-error.ts';
import type { SureCause } from './sure-cause.ts';

/** A diagnosis as `--json` prints it: field names end in their unit, levels are 0..1, what is not known is null. */
export function diagnosisJson(diagnosis: BlockDiagnosis): object {
  const { overlay, phases, cause, aborts, feedback, firstRep, start } = diagnosis;
  return {
    phases: phases.map(phaseJson),
    cause: cause && causeJson(cause),
    aborted_count: aborts.aborted,
    attempts_count: aborts.attempts,
    aborted_share: aborts.share,
    aborted_share_interval: intervalJson(aborts.interval),
    ...feedbackJson(feedback),
    first_rep: firstRep && firstRepJson(firstRep),
    start: start && startJson(start),
    overlay: overlayJson(overlay),
  };
}

function intervalJson(interval: Interval | null): object | null {
  return interval && { low: interval.low, high: interval.high, attained_share: interval.level };
}

function phaseJson(phase: PhaseDiagnosis): object {
  const { cause } = phase;
  return {
    phase: phase.phase,
    average_error_level: phase.averageErrorLevel,
    average_error_level_interval: intervalJson(phase.averageErrorInterval),
    spread_level: phase.spreadLevel,
    cause: cause && {
      kind: cause.kind,
      size_s: cause.kind === 'amount' ? null : cause.size,
      size_share: cause.kind === 'amount' ? cause.size : null,
      reps_count: cause.reps,
      of_count: cause.of,
    },
  };
}

function causeJson({ cause, reps, of, share, size, verdict }: SureCause): object {
  return {
    kind: cause.kind,
    timing_s: cause.timingS,
    rate_ratio: cause.rateRatio,
    amount_ratio: cause.amountRatio,
    reps_count: reps,
    of_count: of,
    verdict,
    method: 'share of reps by Clopper and Pearson; size by the exact interval of a median',
    share_interval: intervalJson(share),
    size_s_interval: cause.kind === 'timing' ? intervalJson(size) : null,
    size_ratio_interval: cause.kind === 'timing' ? null : intervalJson(size),
  };
}

function feedbackJson({ shown, hidden, difference }: ShownHidden): object {
  return {
    shown: figuresJson(shown),
    hidden: figuresJson(hidden),
    hidden_less_shown_level: difference?.shift ?? null,
    hidden_less_shown_level_interval: intervalJson(difference?.interval ?? null),
  };
}

function figuresJson({ reps, medianScore, medianReleaseErrorLevel }: FeedbackFigures): object {
  return {
    reps_count: reps,
    median_score: medianScore,
    median_release_error_level: medianReleaseErrorLevel,
  };
}

function firstRepJson(first: FirstRepLoss): object {
  return {
    loss_points: first.scorePoints,
    loss_release_error_level: first.releaseErrorLevel,
    beyond_spread: first.beyondSpread,
    others_count: first.others,
  };
}

function startJson({ medianS, earliestS, latestS, reps }: StartError): object {
  return { median_s: medianS, earliest_s: earliestS, latest_s: latestS, reps_count: reps };
}

function overlayJson({ grid, reps, mean, spread }: Overlay): object {
  return {
    from_s: grid.fromS,
    step_s: grid.stepS,
    target_level: shortLevels(grid.target),
    mean_level: mean && shortLevels(mean),
    spread_level: spread && shortLevels(spread),
    reps_level: reps.map(shortLevels),
  };
}

/** Five decimals are finer than any pedal. */
export function shortLevels(levels: Float64Array): number[] {
  return Array.from(levels, (level) => Math.round(1e5 * level) / 1e5);
}

import { weeksJson } from '../../consistency/weeks/weeks-json.ts';
import { diagnosisJson } from '../../drill/diagnosis/diagnosis-json.ts';
import { latestSpreadJson } from '../../drill/diagnosis/spread-curve.ts';
import { type SteeringCoupling, steeringAtShare } from '../../drill/diagnosis/steering-coupling.ts';
import type {
  BlockReview,
  PracticeReview,
  ReviewedRep,
  ReviewNote,
  SeriesReview,
  WeeksReview,
} from './practice-review.ts';

/** What the page of a practice says, as `--json` prints it: levels 0..1, units in the names, null what is not known. */
export function practiceReviewJson({ practice, blocks, series, notes }: PracticeReview): object {
  return {
    practice: practice.number,
    driver: practice.driver,
    started_at_local: practice.startedAt,
    conditions: practice.conditions,
    blocks: blocks.map(blockJson),
    ...seriesJson(series),
    notes: notes.map(noteJson),
  };
}

/** What the page of some weeks says. */
export function weeksReviewJson({ today, weeks, series, notes }: WeeksReview): object {
  return { today, weeks, ...seriesJson(series), notes: notes.map(noteJson) };
}

function blockJson({ block, phase, targetId, targetName, reps, drawn }: BlockReview): object {
  const common = {
    block,
    phase,
    target_id: targetId,
    target_name: targetName,
    reps: reps.map(repJson),
  };
  if (drawn.kind === 'not drawn') return { ...common, not_drawn: drawn.reason, ...NOT_DRAWN };
  const { summary, along, target } = drawn;
  const places = Array.from(along.at, milli);
  return {
    ...common,
    not_drawn: null,
    sentence: summary.sentence,
    median_score: summary.medianScore,
    median_release_error_level: summary.medianReleaseErrorLevel,
    average_error_level: summary.averageErrorLevel,
    spread_level: summary.spreadLevel,
    along_s: along.unit === 's' ? places : null,
    along_from_turn_in_m: along.unit === 's' ? null : places,
    target_steering_at_half_brake_deg: halfSteering(target),
    diagnosis: diagnosisJson(summary.diagnosis),
  };
}

/** What a block lacks of which nothing can be drawn. */
const NOT_DRAWN = {
  sentence: null,
  median_score: null,
  median_release_error_level: null,
  average_error_level: null,
  spread_level: null,
  along_s: null,
  along_from_turn_in_m: null,
  target_steering_at_half_brake_deg: null,
  diagnosis: null,
};

function repJson(rep: ReviewedRep): object {
  const { number, feedback, voided, outcome, words, call, selfRating, isDrawn, coupling } = rep;
  const scored = outcome?.kind === 'scored' ? outcome : null;
  return {
    number,
    feedback,
    void: voided,
    score: outcome?.score ?? null,
    score_version: outcome?.version ?? null,
    release_error_level: scored?.releaseErrorLevel ?? null,
    average_error_level: scored?.averageErrorLevel ?? null,
    start_of_release_error_s: scored?.keyPointErrorsS.startOfRelease ?? null,
    brake_off_error_s: scored?.keyPointErrorsS.brakeOff ?? null,
    reapplied_count: scored?.reapplications ?? null,
    steering_at_half_brake_deg: halfSteering(coupling),
    in_words: words,
    call,
    self_rating: selfRating,
    is_drawn: isDrawn,
  };
}

const IN_BLOCKS = { kind: 'none', reason: 'the blocks of this practice have it' } as const;

function seriesJson(series: readonly SeriesReview[]): { readonly targets: readonly object[] } {
  const { targets } = weeksJson(series.map(({ progress }) => progress));
  return {
    targets: targets.map((target, i) => {
      const spread = series[i]!.spread;
      return { ...target, ...latestSpreadJson(spread ?? IN_BLOCKS) };
    }),
  };
}

function noteJson({ at, about, text }: ReviewNote): object {
  return { at_local: at, about, text };
}

function halfSteering(coupling: SteeringCoupling | null): number | null {
  return coupling && steeringAtShare(coupling, 0.5);
}

function milli(value: number): number {
  return Math.round(1000 * value) / 1000;
}

import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

/** A part of the braking zone. */
export const PHASE: AnswerSchema = json.oneOfWords(
  'part of the braking zone',
  'hit',
  '100 to 50 %',
  '50 to 10 %',
  'last 10 %',
);

const OF: AnswerFields = json.wholes({ reps_count: 'reps with it', of_count: 'of so many' });

const PHASE_CAUSE = json.object('what the reps of this phase have in common', {
  kind: json.oneOfWords('the named cause', 'timing', 'rate', 'amount', 'shape'),
  ...json.numbersOrNull({
    size_s: 'median, for timing and rate',
    size_share: 'median, for amount',
  }),
  ...OF,
});

const CAUSE = json.object('what the reps have in common', {
  kind: json.oneOfWords('the named cause', 'timing', 'rate', 'amount', 'shape'),
  ...json.numbers({
    timing_s: 'late is positive',
    rate_ratio: 'time of the release over that of the target, slow is above 1',
    amount_ratio: 'level over that of the target, heavy is above 1',
  }),
  ...OF,
  verdict: json.oneOfWords('how sure', 'clear', 'likely'),
  method: json.text('how the intervals come about'),
  ...json.intervals({
    share_interval: 'share of such reps',
    size_s_interval: 'size, for timing',
    size_ratio_interval: 'size, for rate and amount',
  }),
});

const FIGURES = (what: string): AnswerSchema =>
  json.object(what, {
    ...json.wholes({ reps_count: 'how many' }),
    ...json.numbersOrNull({
      median_score: 'median score',
      median_release_error_level: 'median error of the release',
    }),
  });

const FIRST_REP = json.object('the first rep against the others', {
  ...json.numbers({
    loss_points: 'how much lower its score was',
  }),
  ...json.numbersOrNull({ loss_release_error_level: 'how much larger its error was' }),
  beyond_spread: json.orNull(json.flag('more than the others differ from each other')),
  ...json.wholes({ others_count: 'how many others' }),
});

const START = json.object('when the foot came down, from the cue; before it is negative', {
  ...json.numbers({
    median_s: 'in the middle of the reps',
    earliest_s: 'of the earliest',
    latest_s: 'of the latest',
  }),
  ...json.wholes({ reps_count: 'how many' }),
});

const levels = (description: string): AnswerSchema => json.list(description, { type: 'number' });

const OVERLAY = json.object(
  'The reps over each other; equal places are equal moments of the target',
  {
    ...json.numbers({ from_s: 'first place, from the rise of the target', step_s: 'step' }),
    ...json.columns({ target_level: 'the target' }),
    mean_level: json.orNull(levels('mean of the reps (0 to 1 of full scale)')),
    spread_level: json.orNull(levels('standard deviation between reps (0 to 1 of full scale)')),
    reps_level: json.list('each rep', levels('level (0 to 1 of full scale)')),
  },
);

/** What the reps of a block have in common. */
export const DIAGNOSIS_ANSWER: AnswerSchema = json.object('What the reps have in common', {
  phases: json.list(
    'in the order of the zone',
    json.object('One phase', {
      phase: PHASE,
      ...json.numbersOrNull({ average_error_level: 'mean error, heavy is positive' }),
      average_error_level_interval: json.interval('of that error'),
      ...json.numbersOrNull({ spread_level: 'standard deviation between reps' }),
      cause: json.orNull(PHASE_CAUSE),
    }),
  ),
  cause: json.orNull(CAUSE),
  ...json.wholes({ aborted_count: 'aborted reps', attempts_count: 'all reps begun' }),
  ...json.numbersOrNull({ aborted_share: 'aborted of all begun' }),
  aborted_share_interval: json.interval('of that share'),
  shown: FIGURES('Shown reps'),
  hidden: FIGURES('Hidden reps'),
  ...json.numbersOrNull({
    hidden_less_shown_level: 'error of hidden reps less that of shown ones',
  }),
  hidden_less_shown_level_interval: json.interval('of that difference'),
  first_rep: json.orNull(FIRST_REP),
  start: json.orNull(START),
  overlay: OVERLAY,
});

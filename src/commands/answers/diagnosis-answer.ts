import {
  columns,
  interval,
  intervals,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  wholes,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

/** A part of the braking zone. */
export const PHASE: AnswerSchema = oneOfWords(
  'part of the braking zone',
  'hit',
  '100 to 50 %',
  '50 to 10 %',
  'last 10 %',
);

const OF: AnswerFields = wholes({ reps_count: 'reps with it', of_count: 'of so many' });

const PHASE_CAUSE = object('what the reps of this phase have in common', {
  kind: oneOfWords('the named cause', 'timing', 'rate', 'amount', 'shape'),
  ...numbersOrNull({ size_s: 'median, for timing and rate', size_share: 'median, for amount' }),
  ...OF,
});

const CAUSE = object('what the reps have in common', {
  kind: oneOfWords('the named cause', 'timing', 'rate', 'amount', 'shape'),
  ...numbers({
    timing_s: 'late is positive',
    rate_ratio: 'quick is above 1',
    amount_ratio: 'heavy is above 1',
  }),
  ...OF,
  verdict: oneOfWords('how sure', 'clear', 'likely'),
  method: text('how the intervals come about'),
  ...intervals({
    share_interval: 'share of such reps',
    size_s_interval: 'size, for timing',
    size_ratio_interval: 'size, for rate and amount',
  }),
});

const FIGURES = (what: string): AnswerSchema =>
  object(what, {
    ...wholes({ reps_count: 'how many' }),
    ...numbersOrNull({
      median_score: 'median score',
      median_release_error_level: 'median error of the release',
    }),
  });

const FIRST_REP = object('the first rep against the others', {
  ...numbers({
    loss_points: 'how much lower its score was',
    loss_release_error_level: 'how much larger its error was',
  }),
  beyond_spread: { type: 'boolean', description: 'more than the others differ from each other' },
  ...wholes({ others_count: 'how many others' }),
});

const levels = (description: string): AnswerSchema => list(description, { type: 'number' });

const OVERLAY = object('The reps over each other; equal places are equal moments of the target', {
  ...numbers({ from_s: 'first place, from the rise of the target', step_s: 'step' }),
  ...columns({ target_level: 'the target' }),
  mean_level: orNull(levels('mean of the reps (0 to 1 of full scale)')),
  spread_level: orNull(levels('standard deviation between reps (0 to 1 of full scale)')),
  reps_level: list('each rep', levels('level (0 to 1 of full scale)')),
});

/** What the reps of a block have in common. */
export const DIAGNOSIS_ANSWER: AnswerSchema = object('What the reps have in common', {
  phases: list(
    'in the order of the zone',
    object('One phase', {
      phase: PHASE,
      ...numbersOrNull({ average_error_level: 'mean error, heavy is positive' }),
      average_error_level_interval: interval('of that error'),
      ...numbersOrNull({ spread_level: 'standard deviation between reps' }),
      cause: orNull(PHASE_CAUSE),
    }),
  ),
  cause: orNull(CAUSE),
  ...wholes({ aborted_count: 'aborted reps', attempts_count: 'all reps begun' }),
  ...numbersOrNull({ aborted_share: 'aborted of all begun' }),
  aborted_share_interval: interval('of that share'),
  shown: FIGURES('Shown reps'),
  hidden: FIGURES('Hidden reps'),
  ...numbersOrNull({ hidden_less_shown_level: 'error of hidden reps less that of shown ones' }),
  hidden_less_shown_level_interval: interval('of that difference'),
  first_rep: orNull(FIRST_REP),
  overlay: OVERLAY,
});

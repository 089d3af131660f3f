import {
  eitherOf,
  interval,
  list,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';
import { VERDICT } from './change-answers.ts';
import { NAMES, SERIES_LIST } from './series-answer.ts';

const COMPARED = object('One driver', {
  ...NAMES,
  sensor: orNull(text('what kind of sensor the brake has')),
  since: text('first day of what is compared'),
  ...wholes({ hidden_rep_count: 'hidden reps' }),
  ...numbersOrNull({ typical_error_level: 'typical error from practice to practice' }),
  ...wholes({ typical_error_missing_rep_count: 'reps missing for it' }),
  trend_of: oneOfWords('what the trend is of', 'first-of-day', 'hidden'),
  trend_verdict: VERDICT,
  ...numbersOrNull({ trend_level_per_week: 'slope of the trend' }),
  trend_interval_level_per_week: interval('of that slope'),
  ...wholes({ trend_week_count: 'weeks', trend_missing_rep_count: 'reps missing for a verdict' }),
  spread_verdict: VERDICT,
  ...numbersOrNull({
    spread_before_level: 'standard deviation before',
    spread_now_level: 'standard deviation now',
    spread_ratio: 'now against before',
  }),
  ...wholes({ spread_missing_rep_count: 'reps missing for a verdict' }),
});

const COMPARISON = object('With --all: drivers beside each other', {
  targets: list(
    'one after the other',
    object('One version of a target and of the score', {
      target_id: text('id of the target'),
      target_version: orNull(text('hash of it')),
      ...wholesOrNull({ score_version: 'version of the score' }),
      mixed_conditions: list(
        'conditions in which the drivers differ',
        object('One', {
          name: text('which'),
          values: list('what there is', { type: ['string', 'null'] }),
        }),
      ),
      drivers: list('by name', COMPARED),
    }),
  ),
});

/** `progress --json`. */
export const PROGRESS_ANSWER: AnswerSchema = eitherOf(
  'What the history says about consistency',
  object('Series by series', { targets: SERIES_LIST }),
  COMPARISON,
);

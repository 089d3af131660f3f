import * as json from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';
import { VERDICT } from './change-answers.ts';
import { NAMES, SERIES_LIST } from './series-answer.ts';

const COMPARED = json.object('One driver', {
  ...NAMES,
  sensor: json.orNull(json.text('what kind of sensor the brake has')),
  since: json.text('first day of what is compared'),
  ...json.wholes({ hidden_rep_count: 'hidden reps' }),
  ...json.numbersOrNull({ typical_error_level: 'typical error from practice to practice' }),
  typical_error_interval_level: json.interval('of the typical error'),
  ...json.wholes({ typical_error_missing_rep_count: 'reps missing for it' }),
  trend_of: json.oneOfWords('what the trend is of', 'first-of-day', 'hidden'),
  trend_verdict: VERDICT,
  ...json.numbersOrNull({ trend_level_per_week: 'slope of the trend' }),
  trend_interval_level_per_week: json.interval('of that slope'),
  ...json.wholes({
    trend_week_count: 'weeks',
    trend_missing_rep_count: 'reps missing for a verdict',
  }),
  spread_verdict: VERDICT,
  ...json.numbersOrNull({
    spread_before_level: 'standard deviation before',
    spread_now_level: 'standard deviation now',
    spread_ratio: 'now against before',
  }),
  ...json.wholes({ spread_missing_rep_count: 'reps missing for a verdict' }),
});

const COMPARISON = json.object('With --all: drivers beside each other', {
  targets: json.list(
    'one after the other',
    json.object('One version of a target and of the score', {
      target_id: json.text('id of the target'),
      target_version: json.orNull(json.text('hash of it')),
      ...json.wholesOrNull({ score_version: 'version of the score' }),
      mixed_conditions: json.list(
        'conditions in which the drivers differ',
        json.object('One', {
          name: json.text('which'),
          values: json.list('what there is', { type: ['string', 'null'] }),
        }),
      ),
      drivers: json.list('by name', COMPARED),
    }),
  ),
});

/** `progress --json`. */
export const PROGRESS_ANSWER: AnswerSchema = json.eitherOf(
  'What the history says about consistency',
  json.object('Series by series', { targets: SERIES_LIST }),
  COMPARISON,
);

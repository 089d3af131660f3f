import {
  day,
  flag,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  wholes,
} from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

const CHART_POINT = object('One practice', {
  ...wholes({ practice_id: 'of the practice' }),
  day: day('its day'),
  ...wholes({ hidden_reps: 'hidden' }),
  ...numbers({ median_release_error_level: 'median error of the release' }),
  is_baseline: flag('the limits rest on it'),
  ...numbersOrNull({ moving_range_factor: 'against the practice before' }),
  is_range_outside: flag('that is beyond its limit'),
  signal: orNull(
    oneOfWords('what the chart says', 'above limits', 'below limits', 'eight above', 'eight below'),
  ),
  ...numbersOrNull({
    weighted_mean_level: 'exponentially weighted mean',
    weighted_upper_level: 'its upper limit',
    weighted_lower_level: 'its lower limit',
    sum_above_deviations: 'cumulated above the centre',
    sum_below_deviations: 'cumulated below the centre',
  }),
  sum_signal: orNull(oneOfWords('what the sums say', 'high', 'low')),
});

/** Practices against limits from the first ones. */
export const CHART: AnswerSchema = object('Control chart of the practices', {
  reading: text('what is to be seen'),
  ...numbersOrNull({
    centre_level: 'centre line',
    upper_level: 'upper limit',
    lower_level: 'lower limit',
    moving_range_upper_factor: 'limit between neighbours',
  }),
  ...numbers({
    weighted_mean_weight: 'weight of the newest practice in the weighted mean',
    weighted_mean_reach_deviations: 'reach of its limits',
    sum_slack_deviations: 'slack of the sums',
    sum_limit_deviations: 'limit of the sums',
  }),
  ...wholes({ missing_practices: 'missing for limits' }),
  ...numbersOrNull({ autocorrelation: 'of neighbouring practices' }),
  is_autocorrelated: flag('too much so to trust the limits'),
  points: list('in their order', CHART_POINT),
});

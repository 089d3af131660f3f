import * as json from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

const CHART_POINT = json.object('One practice', {
  ...json.wholes({ practice_id: 'of the practice' }),
  day: json.day('its day'),
  ...json.wholes({ hidden_reps: 'hidden' }),
  ...json.numbers({ median_release_error_level: 'median error of the release' }),
  is_baseline: json.flag('the limits rest on it'),
  ...json.numbersOrNull({ moving_range_factor: 'against the practice before' }),
  is_range_outside: json.flag('that is beyond its limit'),
  signal: json.orNull(
    json.oneOfWords(
      'what the chart says',
      'above limits',
      'below limits',
      'eight above',
      'eight below',
    ),
  ),
  ...json.numbersOrNull({
    weighted_mean_level: 'exponentially weighted mean',
    weighted_upper_level: 'its upper limit',
    weighted_lower_level: 'its lower limit',
    sum_above_deviations: 'cumulated above the centre',
    sum_below_deviations: 'cumulated below the centre',
  }),
  sum_signal: json.orNull(json.oneOfWords('what the sums say', 'high', 'low')),
});

/** Practices against limits from the first ones. */
export const CHART: AnswerSchema = json.object('Control chart of the practices', {
  reading: json.text('what is to be seen'),
  ...json.numbersOrNull({
    centre_level: 'centre line',
    upper_level: 'upper limit',
    lower_level: 'lower limit',
    moving_range_upper_factor: 'limit between neighbours',
  }),
  ...json.numbers({
    weighted_mean_weight: 'weight of the newest practice in the weighted mean',
    weighted_mean_reach_deviations: 'reach of its limits',
    sum_slack_deviations: 'slack of the sums',
    sum_limit_deviations: 'limit of the sums',
  }),
  ...json.wholes({ missing_practices: 'missing for limits' }),
  ...json.numbersOrNull({ autocorrelation: 'of neighbouring practices' }),
  is_autocorrelated: json.flag('too much so to trust the limits'),
  points: json.list('in their order', CHART_POINT),
});

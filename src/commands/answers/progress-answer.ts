import {
  columns,
  day,
  eitherOf,
  flag,
  interval,
  intervals,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  texts,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { PHASE } from './diagnosis-answer.ts';

const VERDICT = orNull(
  oneOfWords('what may be said of the change', 'improving', 'no clear change', 'worsening'),
);

const change = (what: string, unit: 'level' | 's'): AnswerSchema =>
  object(what, {
    verdict: VERDICT,
    hangs_on_one_practice: flag('without one of the practices nothing could be said'),
    ...numbersOrNull({ [`before_spread_${unit}`]: 'standard deviation before' }),
    [`before_interval_${unit}`]: interval('of that'),
    ...wholes({ before_reps: 'before', before_missing_reps: 'missing before' }),
    ...numbersOrNull({ [`now_spread_${unit}`]: 'standard deviation now' }),
    [`now_interval_${unit}`]: interval('of that'),
    ...wholes({ now_reps: 'now', now_missing_reps: 'missing now' }),
    ...numbersOrNull({ ratio: 'now against before' }),
    ratio_interval: interval('of that ratio'),
  });

const trend = (what: string, unit: 'level' | 'agreement'): AnswerSchema =>
  object(what, {
    verdict: VERDICT,
    ...wholes({ weeks: 'that it rests on', missing_weeks: 'missing for a verdict' }),
    ...numbersOrNull({ [`slope_${unit}_per_week`]: 'slope by Theil and Sen' }),
    [`slope_interval_${unit}_per_week`]: interval('of that slope'),
    ...numbersOrNull({
      mann_kendall_statistic: 'S of Mann and Kendall',
      mann_kendall_chance: 'chance of such an S without a trend, both sides',
    }),
    mann_kendall_method: orNull(oneOfWords('how that chance was had', 'counted', 'normal')),
    ...numbersOrNull({ autocorrelation: 'of neighbouring weeks' }),
    is_autocorrelated: flag('too much so to trust the chance'),
  });

const agreements = (before: string): AnswerFields => ({
  ...numbersOrNull({ [`${before}timing_agreement`]: 'felt against measured timing' }),
  ...intervals({ [`${before}timing_agreement_interval`]: 'of that' }),
  ...numbersOrNull({ [`${before}amount_agreement`]: 'felt against measured amount' }),
  ...intervals({ [`${before}amount_agreement_interval`]: 'of that' }),
});

const FELT: AnswerFields = {
  ...agreements('felt_'),
  ...wholes({ felt_rated_reps: 'hidden and rated', felt_missing_reps: 'missing for an agreement' }),
  felt_timing_trend: trend('Agreement on timing by week', 'agreement'),
  felt_amount_trend: trend('Agreement on amount by week', 'agreement'),
  felt_weeks: list(
    'weeks with ratings',
    object('One week', {
      iso_week: text('ISO 8601 week'),
      ...wholes({ rated_reps: 'rated' }),
      ...agreements(''),
    }),
  ),
};

const CURVE = object('the curve over practices that fits best', {
  ...wholes({ practices: 'that it rests on' }),
  chosen: orNull(text('kind of curve')),
  ...numbersOrNull({
    plateau_level: 'where it levels off; not under 20 practices',
    plateau_standard_error_level: 'standard error of that',
  }),
  ...wholes({ missing_practices_for_plateau: 'practices missing for it' }),
  fits: list(
    'all kinds tried',
    object('One kind', {
      family: text('kind of curve'),
      ...numbersOrNull({
        rate_per_practice: 'rate of an exponential, for each practice',
        exponent: 'exponent of a power',
        corrected_information: 'corrected information criterion, smaller is better',
      }),
    }),
  ),
});

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

const CHART = object('Control chart of the practices', {
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

const errors = (name: string): AnswerFields => ({
  ...wholes({ [`${name}_reps`]: name.replaceAll('_', '-') }),
  ...numbersOrNull({ [`${name}_median_release_error_level`]: 'their median error of the release' }),
  [`${name}_median_interval_level`]: interval('of that median'),
});

const WEEK = object('One week', {
  iso_week: text('ISO 8601 week'),
  monday: day('its first day'),
  changed: texts('conditions that changed: a break in comparability'),
  ...wholes({ reps: 'all', practices: 'all' }),
  ...errors('hidden'),
  ...errors('first_of_day'),
  ...numbersOrNull({ hidden_spread_level: 'standard deviation between hidden reps' }),
});

const DAY = object('One day', {
  day: day('local date'),
  iso_week: text('ISO 8601 week'),
  zone: text('time zone it was recorded in'),
  target_version: text('hash of the target'),
  ...wholesOrNull({ score_version: 'version of the score' }),
  source: text('where the reps came from'),
  sensor: text('what kind of sensor the brake has'),
  calibration_id: text('hash of the calibration'),
  foot: text('which foot'),
  footwear: text('shoes worn'),
  condition: orNull(text('what else differed')),
  changed: texts('conditions that changed: a break in comparability'),
  ...wholes({
    reps: 'all',
    shown_reps: 'shown',
    hidden_reps: 'hidden',
    first_of_day_reps: 'first-of-day',
    warm_up_reps: 'to warm up',
    aborted_reps: 'aborted',
    device_lost_reps: 'lost with a device',
    scored_reps: 'scored',
    measured_reps: 'with all numbers',
  }),
  ...numbersOrNull({
    median_score: 'median score',
    median_release_error_level: 'median error of the release',
    average_error_level: 'mean error of the release',
    average_error_spread_level: 'standard deviation of that between reps',
    start_of_release_spread_s: 'standard deviation of the start of release',
    reapplications_per_rep: 'times the pressure went back up, for each rep',
  }),
});

const SPREAD_CURVE = object('spread of the last practice, moment by moment of its target', {
  day: day('day of the practice'),
  ...wholes({ hidden_reps: 'hidden' }),
  ...numbers({ step_s: 'step of time' }),
  ...columns({ spread_level: 'standard deviation between reps' }),
  phases: list(
    'in the order of the zone',
    object('One phase', { phase: PHASE, ...numbersOrNull({ spread_level: 'spread along it' }) }),
  ),
  reading: text('what is to be seen'),
});

const NAMES: AnswerFields = {
  driver: text('whose reps'),
  source: text('where the reps came from'),
  foot: text('which foot'),
  condition: orNull(text('what else differed')),
};

const SERIES = object('One driver on one target under one condition', {
  ...NAMES,
  target_id: text('id of the target'),
  sentence: text('the headline'),
  trend_sentence: text('the trend of first-of-day reps in words'),
  hidden_trend_sentence: text('the trend of hidden reps in words'),
  comparable_since: text('day of the last break in comparability'),
  spread_change: object('Spread now against four weeks before', {
    now_from: text('first day of now'),
    now_to: text('last day of now'),
    before_from: text('first day of before'),
    before_to: text('last day of before'),
    broken_on: orNull(text('day of a break in between')),
    average_error: change('Spread of the average error', 'level'),
    start_of_release: change('Spread of the start of release', 's'),
  }),
  first_of_day_trend: trend('Error of first-of-day reps by week', 'level'),
  hidden_trend: trend('Error of hidden reps by week', 'level'),
  ...numbersOrNull({
    typical_error_level: 'typical error from practice to practice',
    smallest_worthwhile_change_level: 'smallest change worth anything',
    clear_change_level: 'change that is no typical error',
    repeatability_level: 'within a practice (ISO 5725)',
    between_practices_level: 'between practices (ISO 5725)',
    reproducibility_level: 'both together (ISO 5725)',
  }),
  ...FELT,
  practice_curve: orNull(CURVE),
  control_chart: CHART,
  weeks: list('in their order, empty ones too', WEEK),
  days: list('in their order', DAY),
  spread_curve: orNull(SPREAD_CURVE),
  spread_curve_missing: orNull(text('why there is no spread curve')),
});

/** One series after the other. */
export const SERIES_LIST: AnswerSchema = list('one after the other; empty without reps', SERIES);

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

import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

const errors = (name: string): AnswerFields => ({
  ...json.wholes({ [`${name}_reps`]: name.replaceAll('_', '-') }),
  ...json.numbersOrNull({
    [`${name}_median_release_error_level`]: 'their median error of the release',
  }),
  [`${name}_median_interval_level`]: json.interval('of that median'),
});

export const WEEK: AnswerSchema = json.object('One week', {
  iso_week: json.text('ISO 8601 week'),
  monday: json.day('its first day'),
  changed: json.texts('conditions that changed: a break in comparability'),
  ...json.wholes({ reps: 'all', practices: 'all' }),
  ...errors('hidden'),
  ...errors('first_of_day'),
  ...json.numbersOrNull({ hidden_spread_level: 'standard deviation between hidden reps' }),
});

export const DAY: AnswerSchema = json.object('One day', {
  day: json.day('local date'),
  iso_week: json.text('ISO 8601 week'),
  zone: json.text('time zone it was recorded in'),
  target_version: json.text('hash of the target'),
  ...json.wholesOrNull({ score_version: 'version of the score' }),
  source: json.text('where the reps came from'),
  sensor: json.text('what kind of sensor the brake has'),
  calibration_id: json.text('hash of the calibration'),
  foot: json.text('which foot'),
  footwear: json.text('shoes worn'),
  condition: json.orNull(json.text('what else differed')),
  changed: json.texts('conditions that changed: a break in comparability'),
  ...json.wholes({
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
  ...json.numbersOrNull({
    median_score: 'median score',
    median_release_error_level: 'median error of the release',
    average_error_level: 'mean error of the release',
    average_error_spread_level: 'standard deviation of that between reps',
    start_of_release_spread_s: 'standard deviation of the start of release',
    reapplications_per_rep: 'times the pressure went back up, for each rep',
  }),
});

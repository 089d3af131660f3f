import {
  day,
  interval,
  numbersOrNull,
  object,
  orNull,
  text,
  texts,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

const errors = (name: string): AnswerFields => ({
  ...wholes({ [`${name}_reps`]: name.replaceAll('_', '-') }),
  ...numbersOrNull({ [`${name}_median_release_error_level`]: 'their median error of the release' }),
  [`${name}_median_interval_level`]: interval('of that median'),
});

export const WEEK: AnswerSchema = object('One week', {
  iso_week: text('ISO 8601 week'),
  monday: day('its first day'),
  changed: texts('conditions that changed: a break in comparability'),
  ...wholes({ reps: 'all', practices: 'all' }),
  ...errors('hidden'),
  ...errors('first_of_day'),
  ...numbersOrNull({ hidden_spread_level: 'standard deviation between hidden reps' }),
});

export const DAY: AnswerSchema = object('One day', {
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

import {
  eitherOf,
  flag,
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
import { DIAGNOSIS_ANSWER } from './diagnosis-answer.ts';
import { SERIES_LIST } from './series-answer.ts';
import { LIVE_NAMES } from './shared-answers.ts';

const REP = object('One rep', {
  ...wholes({ number: 'in the practice, from 1' }),
  feedback: oneOfWords('what the driver saw', 'shown', 'hidden', 'first-of-day'),
  void: orNull(oneOfWords('why it does not count', 'aborted', 'device lost')),
  ...numbersOrNull({ score: 'the score' }),
  ...wholesOrNull({ score_version: 'version of the score' }),
  ...numbersOrNull({
    release_error_level: 'error of the release, root mean square',
    average_error_level: 'mean error of the release, heavy is positive',
    start_of_release_error_s: 'start of release, late is positive',
    brake_off_error_s: 'brake off, late is positive',
  }),
  ...wholesOrNull({ reapplied_count: 'times the pressure went back up' }),
  ...numbersOrNull({ steering_at_half_brake_deg: 'steering where the brake is half off' }),
  in_words: text('what was said; empty where nothing was'),
  call: orNull(text('the late call it was driven with')),
  self_rating: orNull(text('how it felt')),
  is_drawn: flag('it is one of the overlay'),
});

const places = (description: string): AnswerSchema => orNull(list(description, { type: 'number' }));

const BLOCK = object('The reps of one block on one target', {
  ...wholes({ block: 'in the practice, from 1' }),
  phase: oneOfWords('what it is for', 'first-of-day', 'warm-up', 'block', 'carry-over'),
  target_id: text('id of the target'),
  target_name: text('its name'),
  reps: list('in driving order', REP),
  not_drawn: orNull(text('why there is no picture, and none of what follows')),
  sentence: orNull(text('what to change in the next block')),
  ...numbersOrNull({
    median_score: 'median score',
    median_release_error_level: 'median error of the release',
    average_error_level: 'mean error of the release, heavy is positive',
    spread_level: 'spread between reps over the release',
  }),
  along_s: places('places of the overlay of a target over time (s from its rise)'),
  along_from_turn_in_m: places('places of the overlay with the live car (m from turn-in)'),
  ...numbersOrNull({
    target_steering_at_half_brake_deg: 'steering of the target where the brake is half off',
  }),
  diagnosis: orNull(DIAGNOSIS_ANSWER),
});

const NOTES: AnswerFields = {
  notes: list(
    'in their order',
    object('One note', {
      at_local: text('local date and time of day'),
      about: text('what it is about; empty for the practice as a whole'),
      text: text('the note'),
    }),
  ),
};

/** `report --json`. */
export const REPORT_ANSWER: AnswerSchema = eitherOf(
  'What the page says',
  object('A practice', {
    ...wholes({ practice: 'its number in the history' }),
    driver: text('whose practice'),
    started_at_local: text('local date and time of day'),
    conditions: texts('source, sensor, foot and footwear in words'),
    blocks: list('in driving order', BLOCK),
    targets: SERIES_LIST,
    ...NOTES,
  }),
  object('With --weeks: some weeks', {
    today: text('last day of the weeks'),
    ...wholes({ weeks: 'asked for' }),
    targets: SERIES_LIST,
    ...NOTES,
  }),
);

/** `brief --json`. */
export const BRIEF_ANSWER: AnswerSchema = object('The page for the test day', {
  event: orNull(text('id of the event')),
  date: orNull(text('its first day')),
  ...wholesOrNull({ days_left: 'days until then, negative after it' }),
  corners: list(
    'in driving order',
    object('One corner', {
      ...LIVE_NAMES,
      ...numbers({
        brake_point_m: 'brake point from turn-in, negative before it',
        peak_pedal_force_n: 'pedal force of the peak',
        peak_level: 'level of the peak',
        start_of_release_m: 'start of release from turn-in, negative before it',
        apex_level: 'level at the apex',
        slowest_speed_mps: 'slowest speed',
      }),
      gears: texts('gears in words'),
      bumps: texts('bumps in words'),
      consistency: texts('the own figures in words'),
      try_first: texts('what to try first'),
      notes: texts('notes of the corner'),
    }),
  ),
});

import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { DIAGNOSIS_ANSWER } from './diagnosis-answer.ts';
import { SERIES_LIST } from './series-answer.ts';
import { LIVE_NAMES } from './shared-answers.ts';

const REP = json.object('One rep', {
  ...json.wholes({ number: 'in the practice, from 1' }),
  feedback: json.oneOfWords('what the driver saw', 'shown', 'hidden', 'first-of-day'),
  void: json.orNull(json.oneOfWords('why it does not count', 'aborted', 'device lost')),
  ...json.numbersOrNull({ score: 'the score' }),
  ...json.wholesOrNull({ score_version: 'version of the score' }),
  ...json.numbersOrNull({
    release_error_level: 'error of the release, root mean square',
    average_error_level: 'mean error of the release, heavy is positive',
    start_of_release_error_s: 'start of release, late is positive',
    brake_off_error_s: 'brake off, late is positive',
  }),
  ...json.wholesOrNull({ reapplied_count: 'times the pressure went back up' }),
  ...json.numbersOrNull({ steering_at_half_brake_deg: 'steering where the brake is half off' }),
  in_words: json.text('what was said; empty where nothing was'),
  call: json.orNull(json.text('the late call it was driven with')),
  self_rating: json.orNull(json.text('how it felt')),
  is_drawn: json.flag('it is one of the overlay'),
});

const places = (description: string): AnswerSchema =>
  json.orNull(json.list(description, { type: 'number' }));

const BLOCK = json.object('The reps of one block on one target', {
  ...json.wholes({ block: 'in the practice, from 1' }),
  phase: json.oneOfWords('what it is for', 'first-of-day', 'warm-up', 'block', 'carry-over'),
  target_id: json.text('id of the target'),
  target_name: json.text('its name'),
  reps: json.list('in driving order', REP),
  not_drawn: json.orNull(json.text('why there is no picture, and none of what follows')),
  sentence: json.orNull(json.text('what to change in the next block')),
  ...json.numbersOrNull({
    median_score: 'median score',
    median_release_error_level: 'median error of the release',
    average_error_level: 'mean error of the release, heavy is positive',
    spread_level: 'spread between reps over the release',
  }),
  along_s: places('places of the overlay of a target over time (s from its rise)'),
  along_from_turn_in_m: places('places of the overlay with the live car (m from turn-in)'),
  ...json.numbersOrNull({
    target_steering_at_half_brake_deg: 'steering of the target where the brake is half off',
  }),
  diagnosis: json.orNull(DIAGNOSIS_ANSWER),
});

const NOTES: AnswerFields = {
  notes: json.list(
    'in their order',
    json.object('One note', {
      at_local: json.text('local date and time of day'),
      about: json.text('what it is about; empty for the practice as a whole'),
      text: json.text('the note'),
    }),
  ),
};

/** `report --json`. */
export const REPORT_ANSWER: AnswerSchema = json.eitherOf(
  'What the page says',
  json.object('A practice', {
    ...json.wholes({ practice: 'its number in the history' }),
    driver: json.text('whose practice'),
    started_at_local: json.text('local date and time of day'),
    conditions: json.texts('source, sensor, foot and footwear in words'),
    blocks: json.list('in driving order', BLOCK),
    targets: SERIES_LIST,
    ...NOTES,
  }),
  json.object('With --weeks: some weeks', {
    today: json.text('last day of the weeks'),
    ...json.wholes({ weeks: 'asked for' }),
    targets: SERIES_LIST,
    ...NOTES,
  }),
);

/** `brief --json`. */
export const BRIEF_ANSWER: AnswerSchema = json.object('The page for the test day', {
  event: json.orNull(json.text('id of the event')),
  date: json.orNull(json.text('its first day')),
  ...json.wholesOrNull({ days_left: 'days until then, negative after it' }),
  corners: json.list(
    'in driving order',
    json.object('One corner', {
      ...LIVE_NAMES,
      ...json.numbers({
        brake_point_m: 'brake point from turn-in, negative before it',
        peak_pedal_force_n: 'pedal force of the peak',
        peak_level: 'level of the peak',
        start_of_release_m: 'start of release from turn-in, negative before it',
        apex_level: 'level at the apex',
        slowest_speed_mps: 'slowest speed',
      }),
      gears: json.texts('gears in words'),
      bumps: json.texts('bumps in words'),
      consistency: json.texts('the own figures in words'),
      try_first: json.texts('what to try first'),
      notes: json.texts('notes of the corner'),
    }),
  ),
  cautions: json.texts('what every brief says of targets and hardware'),
});

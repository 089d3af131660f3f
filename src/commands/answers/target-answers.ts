import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';

const NAMES: AnswerFields = {
  id: json.text('id of the target'),
  version: json.text('hash of the curve'),
  name: json.text('its name'),
  corner_type: json.text('what kind of corner it is for'),
  domain: json.oneOfWords('what the file gives it over', 'time', 'distance'),
};

const PEAK = json.numbers({
  peak_level: 'highest level',
  release_s: 'start of release to brake off',
});

export const TARGET_LIST_ANSWER: AnswerSchema = profileListAnswer('targets', { ...NAMES, ...PEAK });

const WRITTEN_TO: AnswerFields = {
  written_to: json.orNull(json.text('path of the file that was written')),
};

const marks = (name: string): AnswerSchema =>
  json.object('Key points from the start of the rise', {
    ...json.numbers(
      {
        rise: 'start of the rise',
        peak: 'peak reached',
        start_of_release: 'start of release',
        final_release: 'last tenth begins',
        brake_off: 'brake off',
      },
      name,
    ),
    ...json.numbersOrNull({ turn_in: 'turn-in', apex: 'apex' }, name),
  });

const nullableColumns = (fields: Readonly<Record<string, string>>): AnswerFields =>
  Object.fromEntries(
    Object.entries(json.columns(fields)).map(([name, schema]) => [name, json.orNull(schema)]),
  );

const TARGET: AnswerFields = {
  ...NAMES,
  advice: json.orNull(json.text("the coach's words")),
  learned_from: json.orNull(json.text('what it was learned from, in words')),
  ...json.columns({ time_s: 'time from the start of the rise, every 10 ms' }),
  ...nullableColumns({
    distance_m: 'distance from the start of the rise, for a target over distance',
    speed_mps: 'speed, for a target over distance',
    steering_deg: 'steering at the wheel, left positive',
  }),
  ...json.columns({ level: 'level of the brake', corridor_level: 'half width of the corridor' }),
  marks_s: marks('marks_s'),
  marks_m: json.orNull(marks('marks_m')),
  gears: json.list(
    'where gears change',
    json.object('One change', {
      ...json.numbers({ time_s: 'when' }),
      ...json.wholes({ gear: 'gear from then on' }),
    }),
  ),
  ...PEAK,
  ...json.numbers({
    rise_s: 'length of the rise',
    mean_release_level_per_s: 'mean rate of the release',
    steepest_release_level_per_s: 'steepest rate of the release',
  }),
  ...json.numbersOrNull({
    steering_overlap_share: 'share of the braking time after turn-in',
    peak_deceleration_mps2: 'deceleration at the peak',
  }),
  full_scale: json.object(
    'What level 1 stands for',
    json.numbersOrNull({ pedal_force_n: 'pedal force', pressure_bar: 'line pressure' }),
  ),
};

export const TARGET_SHOW_ANSWER: AnswerSchema = json.object('A target and its curve', TARGET);

export const TARGET_SHAPE_ANSWER: AnswerSchema = json.object('A target of a shape', {
  ...TARGET,
  ...WRITTEN_TO,
});

export const TARGET_LEARN_ANSWER: AnswerSchema = json.object('A target that was learned', {
  target_file: {
    type: 'object',
    description: "keys of a target file, as the program's profiles/schema/target.schema.json",
  },
  ...json.wholes({ reps_count: 'reps or zones that it was learned from' }),
  unused_landmarks: json.list(
    'landmarks that the reps could not be laid over each other by',
    json.object('One landmark', { landmark: json.text('which'), reason: json.text('why not') }),
  ),
  ...json.numbers({
    miss_level: 'how far the curve of the file is from the mean, root mean square',
  }),
  corridor_kind: json.oneOfWords('how the corridor came about', 'default', 'widened', 'cut'),
  curves: json.object('Curves over equal steps of time', {
    ...json.numbers({ from_s: 'first place, from the start of the rise', step_s: 'step' }),
    ...json.columns({
      learned_level: 'what was learned',
      mean_level: 'mean of the reps',
      spread_level: 'standard deviation between reps',
      band_level: 'half width of the band that holds further reps',
    }),
  }),
  ...WRITTEN_TO,
});

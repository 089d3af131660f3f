import {
  columns,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  wholes,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';

const NAMES: AnswerFields = {
  id: text('id of the target'),
  version: text('hash of the curve'),
  name: text('its name'),
  corner_type: text('what kind of corner it is for'),
  domain: oneOfWords('what the file gives it over', 'time', 'distance'),
};

const PEAK = numbers({ peak_level: 'highest level', release_s: 'start of release to brake off' });

export const TARGET_LIST_ANSWER: AnswerSchema = profileListAnswer('targets', { ...NAMES, ...PEAK });

const WRITTEN_TO: AnswerFields = { written_to: orNull(text('path of the file that was written')) };

const marks = (name: string): AnswerSchema =>
  object('Key points from the start of the rise', {
    ...numbers(
      {
        rise: 'start of the rise',
        peak: 'peak reached',
        start_of_release: 'start of release',
        final_release: 'last tenth begins',
        brake_off: 'brake off',
      },
      name,
    ),
    ...numbersOrNull({ turn_in: 'turn-in', apex: 'apex' }, name),
  });

const nullableColumns = (fields: Readonly<Record<string, string>>): AnswerFields =>
  Object.fromEntries(
    Object.entries(columns(fields)).map(([name, schema]) => [name, orNull(schema)]),
  );

const TARGET: AnswerFields = {
  ...NAMES,
  advice: orNull(text("the coach's words")),
  learned_from: orNull(text('what it was learned from, in words')),
  ...columns({ time_s: 'time from the start of the rise, every 10 ms' }),
  ...nullableColumns({
    distance_m: 'distance from the start of the rise, for a target over distance',
    speed_mps: 'speed, for a target over distance',
    steering_deg: 'steering at the wheel, left positive',
  }),
  ...columns({ level: 'level of the brake', corridor_level: 'half width of the corridor' }),
  marks_s: marks('marks_s'),
  marks_m: orNull(marks('marks_m')),
  gears: list(
    'where gears change',
    object('One change', {
      ...numbers({ time_s: 'when' }),
      ...wholes({ gear: 'gear from then on' }),
    }),
  ),
  ...PEAK,
  ...numbers({
    rise_s: 'length of the rise',
    mean_release_level_per_s: 'mean rate of the release',
    steepest_release_level_per_s: 'steepest rate of the release',
  }),
  ...numbersOrNull({
    steering_overlap_share: 'share of the braking time after turn-in',
    peak_deceleration_mps2: 'deceleration at the peak',
  }),
  full_scale: object(
    'What level 1 stands for',
    numbersOrNull({ pedal_force_n: 'pedal force', pressure_bar: 'line pressure' }),
  ),
};

export const TARGET_SHOW_ANSWER: AnswerSchema = object('A target and its curve', TARGET);

export const TARGET_SHAPE_ANSWER: AnswerSchema = object('A target of a shape', {
  ...TARGET,
  ...WRITTEN_TO,
});

export const TARGET_LEARN_ANSWER: AnswerSchema = object('A target that was learned', {
  target_file: {
    type: 'object',
    description: "keys of a target file, as the program's profiles/schema/target.schema.json",
  },
  ...wholes({ reps_count: 'reps or zones that it was learned from' }),
  unused_landmarks: list(
    'landmarks that the reps could not be laid over each other by',
    object('One landmark', { landmark: text('which'), reason: text('why not') }),
  ),
  ...numbers({ miss_level: 'how far the curve of the file is from the mean, root mean square' }),
  corridor_kind: oneOfWords('how the corridor came about', 'default', 'widened', 'cut'),
  curves: object('Curves over equal steps of time', {
    ...numbers({ from_s: 'first place, from the start of the rise', step_s: 'step' }),
    ...columns({
      learned_level: 'what was learned',
      mean_level: 'mean of the reps',
      spread_level: 'standard deviation between reps',
      band_level: 'half width of the band that holds further reps',
    }),
  }),
  ...WRITTEN_TO,
});

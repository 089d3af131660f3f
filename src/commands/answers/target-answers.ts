import {
  columns,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  texts,
  wholes,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';
import { LEFT_OUT_ANSWER, LIVE_NAMES } from './shared-answers.ts';

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

const POINT: AnswerFields = numbers({
  distance_m: 'distance before the slowest point',
  time_s: 'time from the brake point',
  speed_mps: 'speed',
  level: 'level of the brake',
  pressure_front_bar: 'line pressure, front',
  pedal_force_N: 'pedal force',
});

const keyPoint = (what: string): AnswerSchema => object(what, POINT);

const DOWNSHIFT = object('One downshift', {
  ...wholes({ from_gear: 'gear before', to_gear: 'gear after' }),
  ...numbers({ distance_m: 'where, before the slowest point' }),
  ...numbersOrNull({ earliest_distance_m: 'earliest safe place' }),
  ...numbers({
    speed_mps: 'speed there',
    engine_rpm: 'revs after it',
    rear_utilization: 'use of the rear axle',
    rear_margin: 'what the rear axle has left',
  }),
  safe: { type: 'boolean', description: 'neither over-rev nor a rear axle that lets go' },
});

const BUMP = object('One bump', {
  ...numbers({
    distance_m: 'where, before the slowest point',
    length_m: 'how long',
    load_loss_share: 'share of the load that is lost on it',
  }),
  ...numbersOrNull({
    rear_utilization: 'use of the rear axle',
    rear_margin: 'what the rear axle has left',
  }),
  ...numbers({ ease_share: 'share of the level to take off' }),
});

const PARTS: AnswerFields = numbers({
  straight_s: 'straight before the brake point',
  braking_s: 'braking zone',
  corner_exit_s: 'slowest point to the end of the corner',
  exit_straight_s: 'straight after it',
  total_s: 'all of it',
  shifting_s: 'of that in upshifts',
});

const driven = (what: string): AnswerSchema =>
  object(what, {
    ...PARTS,
    ...numbers({ exit_speed_mps: 'speed at the end' }),
    upshifts: list(
      'in driving order',
      object('One upshift', {
        ...wholes({ from_gear: 'gear before', to_gear: 'gear after' }),
        ...numbers({ speed_mps: 'speed there' }),
      }),
    ),
  });

const TIME_DIFFERENCE = orNull(
  object('With --against-gear or --against-variant: the same road driven two ways', {
    against_variant: text('variant of the other'),
    ...wholes({ against_slowest_gear: 'gear of the other at the slowest point' }),
    ...numbers({
      length_m: 'length of the road compared',
      from_before_apex_m: 'where it begins, before the apex',
      to_after_apex_m: 'where it ends, after the apex',
    }),
    this: driven('This one, part by part'),
    other: driven('The other, part by part'),
    ...numbers({ difference_s: 'this less the other, negative is quicker' }),
    difference: object('This less the other, part by part', PARTS),
    exit_left_out: texts('what the exit leaves out'),
  }),
);

export const TARGET_DERIVE_ANSWER: AnswerSchema = object(
  'The target that follows from a car and a corner: lists over distance, and what stands along it',
  {
    ...LIVE_NAMES,
    model: oneOfWords('model of the car', 'two-axle', 'point-mass'),
    ...columns({
      distance_m: 'distance before the slowest point',
      time_s: 'time from the brake point',
      speed_mps: 'speed',
      level: 'level of the brake',
      pressure_front_bar: 'line pressure, front',
      pressure_rear_bar: 'line pressure, rear',
      pedal_force_N: 'pedal force',
      steering_deg: 'steering at the wheel, left positive',
      accel_x_mps2: 'acceleration ahead, braking negative (ISO 8855)',
      accel_y_mps2: 'acceleration to the left (ISO 8855)',
      front_utilization: 'use of the front axle',
      rear_utilization: 'use of the rear axle',
    }),
    limiter: texts('what limits at each place: an axle, or the foot'),
    ...columns({ gear: 'gear at each place' }),
    key_points: object('Key points', {
      brake_point: keyPoint('Brake point'),
      peak: keyPoint('Peak'),
      start_of_release: keyPoint('Start of release'),
      turn_in: keyPoint('Turn-in'),
      apex: keyPoint('Apex'),
      slowest: keyPoint('Slowest point'),
    }),
    lock_order: object('Which axle would lock first', {
      first_axle: oneOfWords('that axle', 'front', 'rear'),
      ...numbersOrNull({ margin_g: 'how much more braking the other axle would take' }),
      ...numbers({ turns_at_g: 'deceleration at which the order turns' }),
    }),
    straight_bleed: object('Pressure let off on the straight as downforce falls', {
      ...numbers({
        from_distance_m: 'where it begins',
        to_distance_m: 'where it ends',
        pressure_front_bar: 'how much, front line',
        level: 'how much',
      }),
    }),
    downshifts: list('in driving order', DOWNSHIFT),
    bumps: list('in driving order', BUMP),
    ...numbers({
      too_fast_mps: 'what the slowest point is over its limit',
      duration_s: 'brake point to slowest point',
      rises_again_level: 'how far the level rises again in the release',
      foot_loss_s: 'time that a foot loses which can only let go so quickly',
      full_scale_pedal_force_N: 'pedal force that is level 1',
    }),
    left_out: LEFT_OUT_ANSWER,
    time_difference: TIME_DIFFERENCE,
  },
);

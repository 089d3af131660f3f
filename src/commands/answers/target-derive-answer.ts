import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { LEFT_OUT_ANSWER, LIVE_NAMES } from './shared-answers.ts';

const POINT: AnswerFields = json.numbers({
  distance_m: 'distance before the slowest point',
  time_s: 'time from the brake point',
  speed_mps: 'speed',
  level: 'level of the brake',
  pressure_front_bar: 'line pressure, front',
  pedal_force_n: 'pedal force',
});

const keyPoint = (what: string): AnswerSchema => json.object(what, POINT);

const DOWNSHIFT = json.object('One downshift', {
  ...json.wholes({ from_gear: 'gear before', to_gear: 'gear after' }),
  ...json.numbers({ distance_m: 'where, before the slowest point' }),
  ...json.numbersOrNull({ earliest_distance_m: 'earliest safe place' }),
  ...json.numbers({
    speed_mps: 'speed there',
    engine_rpm: 'revs after it',
    rear_utilization: 'use of the rear axle',
    rear_margin: 'what the rear axle has left',
    ease_share: 'share of the brake to give up during it, within the corridor',
  }),
  safe: { type: 'boolean', description: 'neither over-rev nor a rear axle that lets go' },
});

const BUMP = json.object('One bump', {
  ...json.numbers({
    distance_m: 'where, before the slowest point',
    length_m: 'how long',
    load_loss_share: 'share of the load that is lost on it',
  }),
  ...json.numbersOrNull({
    rear_utilization: 'use of the rear axle',
    rear_margin: 'what the rear axle has left',
  }),
  ...json.numbers({
    ease_share: 'share of the level to take off so that the rear stays and no wheel locks',
  }),
});

const PARTS: AnswerFields = json.numbers({
  straight_s: 'straight before the brake point',
  braking_s: 'braking zone',
  corner_exit_s: 'slowest point to the end of the corner',
  exit_straight_s: 'straight after it',
  total_s: 'all of it',
  shifting_s: 'of that in upshifts',
});

const driven = (what: string): AnswerSchema =>
  json.object(what, {
    ...PARTS,
    ...json.numbers({ exit_speed_mps: 'speed at the end' }),
    upshifts: json.list(
      'in driving order',
      json.object('One upshift', {
        ...json.wholes({ from_gear: 'gear before', to_gear: 'gear after' }),
        ...json.numbers({ speed_mps: 'speed there' }),
      }),
    ),
  });

const TIME_DIFFERENCE = json.orNull(
  json.object('With --against-gear or --against-variant: the same road driven two ways', {
    against_variant: json.text('variant of the other'),
    ...json.wholes({ against_slowest_gear: 'gear of the other at the slowest point' }),
    ...json.numbers({
      length_m: 'length of the road compared',
      from_before_apex_m: 'where it begins, before the apex',
      to_after_apex_m: 'where it ends, after the apex',
    }),
    this: driven('This one, part by part'),
    other: driven('The other, part by part'),
    ...json.numbers({ difference_s: 'this less the other, negative is quicker' }),
    difference: json.object('This less the other, part by part', PARTS),
    exit_left_out: json.texts('what the exit leaves out'),
  }),
);

export const TARGET_DERIVE_ANSWER: AnswerSchema = json.object(
  'The target that follows from a car and a corner: lists over distance, and what stands along it',
  {
    ...LIVE_NAMES,
    model: json.oneOfWords('model of the car', 'two-axle', 'point-mass'),
    ...json.columns({
      distance_m: 'distance before the slowest point',
      time_s: 'time from the brake point',
      speed_mps: 'speed',
      level: 'level of the brake',
      pressure_front_bar: 'line pressure, front',
      pressure_rear_bar: 'line pressure, rear',
      pedal_force_n: 'pedal force',
      steering_deg: 'steering at the wheel, left positive',
      accel_x_mps2: 'acceleration ahead, braking negative (ISO 8855)',
      accel_y_mps2: 'acceleration to the left (ISO 8855)',
      front_utilization: 'use of the front axle',
      rear_utilization: 'use of the rear axle',
    }),
    limiter: json.texts('what limits at each place: an axle, load on its way, or the foot'),
    ...json.columns({ gear: 'gear at each place' }),
    key_points: json.object('Key points', {
      brake_point: keyPoint('Brake point'),
      peak: keyPoint('Peak'),
      start_of_release: keyPoint('Start of release'),
      turn_in: keyPoint('Turn-in'),
      apex: keyPoint('Apex'),
      slowest: keyPoint('Slowest point'),
    }),
    push_end: json.orNull(
      keyPoint('Where the push ends and the foot waits for load; null where it reaches the peak'),
    ),
    lock_order: json.object('Which axle would lock first', {
      first_axle: json.oneOfWords('that axle', 'front', 'rear'),
      ...json.numbersOrNull({ margin_g: 'how much more braking the other axle would take' }),
      ...json.numbers({ turns_at_g: 'deceleration at which the order turns' }),
    }),
    straight_bleed: json.object('Pressure let off on the straight as downforce falls', {
      ...json.numbers({
        from_distance_m: 'where it begins',
        to_distance_m: 'where it ends',
        pressure_front_bar: 'how much, front line',
        level: 'how much',
      }),
    }),
    downshifts: json.list('in driving order', DOWNSHIFT),
    bumps: json.list('in driving order', BUMP),
    ...json.numbers({
      too_fast_mps: 'what the slowest point is over its limit',
      unsettled_m:
        'how far the last round of loads and brakes still moved it, 0 where they settled',
      duration_s: 'brake point to slowest point',
      rises_again_level: 'how far the level rises again in the release',
      foot_loss_s: 'time that a foot loses which only eases, and only so quickly',
      full_scale_pedal_force_n: 'pedal force that is level 1',
    }),
    left_out: LEFT_OUT_ANSWER,
    time_difference: TIME_DIFFERENCE,
  },
);

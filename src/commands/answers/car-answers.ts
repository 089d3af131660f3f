import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';
import { LEFT_OUT_ANSWER } from './shared-answers.ts';

const NAMES: AnswerFields = {
  id: json.text('id of the car'),
  name: json.text('its name'),
  kind: json.text('what kind of car it is'),
  ...json.numbers({ mass_kg: 'mass with driver' }),
};

export const CAR_LIST_ANSWER: AnswerSchema = profileListAnswer('cars', {
  ...NAMES,
  ...json.numbers({
    top_speed_kmh: 'top speed',
    peak_deceleration_g: 'braking limit at top speed',
    peak_pedal_force_n: 'pedal force at that limit',
  }),
});

const LIMIT = json.object('Braking limit on a flat straight at one speed, clutch open', {
  ...json.numbers({
    speed_mps: 'speed',
    speed_kmh: 'the same speed',
    deceleration_g: 'deceleration at the limit',
    pedal_force_n: 'pedal force at the limit',
    level: 'the same force',
    pressure_front_bar: 'line pressure, front',
    pressure_rear_bar: 'line pressure, rear',
    front_share: 'share of the front brakes',
    ideal_front_share: 'share with which both axles would lock at once',
  }),
  locks_first: json.oneOfWords('axle that locks first', 'front', 'rear'),
  ...json.numbersOrNull({ margin_g: 'how much more braking the other axle would take' }),
});

export const CAR_SHOW_ANSWER: AnswerSchema = json.object('A car and its braking limit over speed', {
  ...NAMES,
  ...json.numbers({
    wheelbase_m: 'wheelbase',
    cg_to_rear_axle_m: 'centre of gravity to rear axle',
    cg_height_m: 'height of the centre of gravity',
    front_brake_share: 'share of the front brakes',
    locks_together_at_g: 'deceleration at which both axles lock together',
    pad_friction_front: 'friction of the front pads',
    pad_friction_rear: 'friction of the rear pads',
    full_scale_pedal_force_n: 'pedal force that is level 1',
    driver_peak_pedal_force_n: 'most that the driver of the model pushes',
    top_speed_kmh: 'top speed',
  }),
  ...json.wholes({ gears: 'how many gears' }),
  ...json.numbers({
    steering_ratio: 'angle at the wheel for each angle at the road',
    understeer_deg_per_g: 'understeer',
    pitch_hz: 'pitch frequency of the body',
  }),
  anti_lock: json.flag('has anti-lock brakes'),
  rear_valve: json.flag('has a valve in the rear brakes'),
  hybrid: json.flag('brakes with a motor too'),
  limits: json.list('from slow to top speed', LIMIT),
  left_out: LEFT_OUT_ANSWER,
});

const pair = (name: string, what: string): AnswerFields => ({
  [name]: json.object(
    what,
    json.numbersOrNull({ car: `${what} of the car`, rig: `${what} of the rig` }, name),
  ),
});

export const CAR_MATCH_ANSWER: AnswerSchema = json.object(
  "The rig's brake pedal against the car's",
  {
    car: json.text('id of the car'),
    ...json.numbers({
      speed_kmh: 'speed from which the car brakes',
      car_peak_force_n: "pedal force at the car's limit",
      car_peak_force_lbf: 'the same force',
    }),
    ...json.numbersOrNull({
      rig_peak_force_n: "force at the rig's full scale",
      rig_peak_force_lbf: 'the same force',
      difference_n: 'rig less car',
      difference_lbf: 'the same difference',
    }),
    verdict: json.oneOfWords(
      'how they compare',
      'close',
      'fair',
      'too light',
      'too heavy',
      'unknown',
    ),
    verdict_basis: json.text('where the limits of the verdict come from'),
    ...json.numbers({ close_lbf: 'apart, still close', fair_lbf: 'apart, still fair' }),
    ...pair('travel_mm', 'travel at full scale'),
    ...pair('dead_stroke_mm', 'travel before the pedal resists'),
    ...pair('stiffness_n_per_mm', 'stiffness after that'),
    moves_otherwise: json.texts('in what the pedals move differently'),
    drill: json.orNull(json.text('the command that drills for it')),
    cannot_teach: json.texts('what this rig cannot teach'),
  },
);

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

const NAMES: AnswerFields = {
  id: text('id of the corner'),
  name: text('its name'),
  corner_type: text('what kind of corner it is'),
  version: text('hash of what the sheet says'),
};

export const CORNER_LIST_ANSWER: AnswerSchema = profileListAnswer('corners', {
  ...NAMES,
  direction: oneOfWords('which way it turns', 'left', 'right'),
  line: text('kind of line'),
  ...numbers({ turn_deg: 'angle it turns' }),
  ...numbersOrNull({ radius_m: 'tightest radius' }),
  variants: list(
    'in the order of the sheet',
    object('One variant', {
      variant: text('its name'),
      ...numbers({ approach_speed_kmh: 'speed on the approach' }),
    }),
  ),
});

const BUMP = object('A bump', {
  ...numbers({
    before_apex_m: 'where, before the apex',
    length_m: 'how long',
    load_loss_share: 'share of the load that is lost on it',
  }),
});

export const CORNER_SHOW_ANSWER: AnswerSchema = object(
  'A corner: lists over its path at steps of about 1 m, and what stands along it',
  {
    ...NAMES,
    advice: orNull(text("the coach's words")),
    variant: text('the variant shown'),
    variants: texts('all variants'),
    line: text('kind of line'),
    ...numbers({
      path_length_m: 'length of the path',
      apex_from_turn_in_m: 'turn-in to apex',
      approach_speed_kmh: 'speed on the approach',
      approach_length_m: 'length of the approach',
      grip_share: "grip, against the car's own",
    }),
    gears: object('Gears of the sheet', {
      ...wholes({
        approach_gear: 'on the approach',
        slowest_gear: 'at the slowest point',
      }),
      shifts_before_apex_m: orNull(
        list('where the sheet wants the downshifts (m before the apex)', { type: 'number' }),
      ),
    }),
    bumps: list('in driving order', BUMP),
    coach_mark: orNull(
      object("The coach's mark beside the road", {
        ...numbers({ before_apex_m: 'where, before the apex' }),
        word: text('what stands there'),
      }),
    ),
    call: orNull(text('the late call that asks for this variant')),
    places: list(
      'what the drawing names',
      object('One place', {
        name: text('what is there'),
        ...numbers({ before_apex_m: 'where, before the apex' }),
      }),
    ),
    ...columns({
      distance_m: 'distance before the apex',
      curvature_per_m: 'curvature, left positive',
      slope_percent: 'slope, up positive',
      bank_percent: 'bank, into the turn positive',
      x_m: 'ahead of turn-in',
      y_m: 'to the left of turn-in',
      heading_deg: 'heading, left positive',
    }),
  },
);

export const CORNER_NEW_ANSWER: AnswerSchema = object('A corner sheet that was written', {
  file: text('path of the file'),
  id: text('id of the corner'),
  ...numbers({
    grip: 'friction that was assumed',
    goal_mark_m: 'goal mark, before the slowest point',
    first_lap_mark_m: 'first-lap mark, before the slowest point',
    brake_point_per_005_grip_m: 'how far 0.05 less friction moves the brake point back',
  }),
});

const BASIS = oneOfWords('how it was come by', 'measured', 'estimated', 'assumed');

const figure = (name: string, what: string): AnswerFields => ({
  [name]: orNull(
    object(what, {
      ...numbers(
        { value: 'median of the zones', lowest: 'lowest zone', highest: 'highest zone' },
        name,
      ),
      ...wholes({ zones_count: 'zones it comes from' }),
      basis: BASIS,
      rule: text('how, in words'),
    }),
  ),
});

/** `corner fit --json`. */
export const CORNER_FIT_ANSWER: AnswerSchema = object('A corner sheet made from logged zones', {
  trace: text('name of the log'),
  zones: list('numbers of the zones', { type: 'integer' }),
  left_out: list(
    'zones that say nothing',
    object('One zone', { ...wholes({ zone: 'its number' }), reason: text('why') }),
  ),
  car: orNull(text('the car that was logged')),
  direction: object('Which way it turns', {
    value: oneOfWords('that way', 'left', 'right'),
    basis: BASIS,
  }),
  entry: object('Kind of line into the corner', {
    value: oneOfWords('that kind', 'smooth-apex', 'clothoid', 'constant'),
    basis: BASIS,
    rule: text('how, in words'),
  }),
  figures: object('What the zones show', {
    ...figure('approach_speed_kmh', 'speed on the approach'),
    ...figure('brake_point_before_slowest_m', 'brake point'),
    ...figure('turn_in_before_slowest_m', 'turn-in'),
    ...figure('slowest_speed_kmh', 'slowest speed'),
    ...figure('radius_m', 'smallest radius'),
    ...figure('entry_length_m', 'turn-in to the smallest radius'),
    ...figure('exit_length_m', 'length of the way out'),
    ...figure('turn_deg', 'angle turned'),
    ...figure('exit_speed_kmh', 'speed at the end'),
    ...figure('approach_gear', 'gear on the approach'),
    ...figure('slowest_gear', 'gear at the slowest point'),
    ...figure('last_downshift_before_slowest_m', 'last downshift'),
    ...figure('braking_grip_share', 'share of the grip of the car in braking'),
    ...figure('turning_grip_share', 'share of the grip of the car in turning'),
  }),
  shifts_before_slowest_m: list('downshifts (m before the slowest point)', { type: 'number' }),
  unknown: texts('what the log could not say'),
  cautions: texts('what to mind'),
  sheet: text('the corner sheet, YAML'),
  written_to: orNull(text('path of the file that was written')),
});

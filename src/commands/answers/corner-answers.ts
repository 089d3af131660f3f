import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';

const NAMES: AnswerFields = {
  id: json.text('id of the corner'),
  name: json.text('its name'),
  corner_type: json.text('what kind of corner it is'),
  version: json.text('hash of what the sheet says'),
};

export const CORNER_LIST_ANSWER: AnswerSchema = profileListAnswer('corners', {
  ...NAMES,
  direction: json.oneOfWords('which way it turns', 'left', 'right'),
  line: json.text('kind of line'),
  ...json.numbers({ turn_deg: 'angle it turns' }),
  ...json.numbersOrNull({ radius_m: 'tightest radius' }),
  variants: json.list(
    'in the order of the sheet',
    json.object('One variant', {
      variant: json.text('its name'),
      ...json.numbers({ approach_speed_kmh: 'speed on the approach' }),
    }),
  ),
});

const BUMP = json.object('A bump', {
  ...json.numbers({
    before_apex_m: 'where, before the apex',
    length_m: 'how long',
    load_loss_share: 'share of the load that is lost on it',
  }),
});

export const CORNER_SHOW_ANSWER: AnswerSchema = json.object(
  'A corner: lists over its path at steps of about 1 m, and what stands along it',
  {
    ...NAMES,
    advice: json.orNull(json.text("the coach's words")),
    variant: json.text('the variant shown'),
    variants: json.texts('all variants'),
    line: json.text('kind of line'),
    ...json.numbers({
      path_length_m: 'length of the path',
      apex_from_turn_in_m: 'turn-in to apex',
      approach_speed_kmh: 'speed on the approach',
      approach_length_m: 'length of the approach',
      grip_share: "grip, against the car's own",
    }),
    gears: json.object('Gears of the sheet', {
      ...json.wholes({
        approach_gear: 'on the approach',
        slowest_gear: 'at the slowest point',
      }),
      shifts_before_apex_m: json.orNull(
        json.list('where the sheet wants the downshifts (m before the apex)', { type: 'number' }),
      ),
    }),
    bumps: json.list('in driving order', BUMP),
    coach_mark: json.orNull(
      json.object("The coach's mark beside the road", {
        ...json.numbers({ before_apex_m: 'where, before the apex' }),
        word: json.text('what stands there'),
      }),
    ),
    call: json.orNull(json.text('the late call that asks for this variant')),
    places: json.list(
      'what the drawing names',
      json.object('One place', {
        name: json.text('what is there'),
        ...json.numbers({ before_apex_m: 'where, before the apex' }),
      }),
    ),
    ...json.columns({
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

export const CORNER_NEW_ANSWER: AnswerSchema = json.object('A corner sheet that was written', {
  file: json.text('path of the file'),
  id: json.text('id of the corner'),
  ...json.numbers({
    grip: 'friction that was assumed',
    goal_mark_m: 'goal mark, before the slowest point',
    first_lap_mark_m: 'first-lap mark, before the slowest point',
    brake_point_per_005_grip_m: 'how far 0.05 less friction moves the brake point back',
  }),
});

const BASIS = json.oneOfWords('how it was come by', 'measured', 'estimated', 'assumed');

const figure = (name: string, what: string): AnswerFields => ({
  [name]: json.orNull(
    json.object(what, {
      ...json.numbers(
        { value: 'median of the zones', lowest: 'lowest zone', highest: 'highest zone' },
        name,
      ),
      ...json.wholes({ zones_count: 'zones it comes from' }),
      basis: BASIS,
      rule: json.text('how, in words'),
    }),
  ),
});

/** `corner fit --json`. */
export const CORNER_FIT_ANSWER: AnswerSchema = json.object(
  'A corner sheet made from logged zones',
  {
    trace: json.text('name of the log'),
    zones: json.list('numbers of the zones', { type: 'integer' }),
    left_out: json.list(
      'zones that say nothing',
      json.object('One zone', { ...json.wholes({ zone: 'its number' }), reason: json.text('why') }),
    ),
    car: json.orNull(json.text('the car that was logged')),
    direction: json.object('Which way it turns', {
      value: json.oneOfWords('that way', 'left', 'right'),
      basis: BASIS,
    }),
    entry: json.object('Kind of line into the corner', {
      value: json.oneOfWords('that kind', 'smooth-apex', 'clothoid', 'constant'),
      basis: BASIS,
      rule: json.text('how, in words'),
    }),
    figures: json.object('What the zones show', {
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
    shifts_before_slowest_m: json.list('downshifts (m before the slowest point)', {
      type: 'number',
    }),
    unknown: json.texts('what the log could not say'),
    cautions: json.texts('what to mind'),
    sheet: json.text('the corner sheet, YAML'),
    written_to: json.orNull(json.text('path of the file that was written')),
  },
);

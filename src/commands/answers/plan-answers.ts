import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';

const CORNER: AnswerFields = {
  corner: json.orNull(json.text('corner of a live car')),
  car: json.orNull(json.text('its car')),
  variant: json.orNull(json.text('its variant; the first of the sheet where none is named')),
};

const PLAN_ZONE = json.object('A target over time, or a corner with a live car', {
  target: json.orNull(json.text('target over time')),
  live: json.orNull(
    json.object('what follows once the driver is promoted', {
      corner: json.text('corner'),
      car: json.text('car'),
      variant: json.orNull(json.text('variant')),
    }),
  ),
  ...CORNER,
});

const range = (description: string): AnswerSchema => ({
  type: 'array',
  description,
  items: { type: 'number' },
  minItems: 2,
  maxItems: 2,
});

const PLAN: AnswerFields = {
  id: json.text('id of the plan'),
  name: json.text('its name'),
  advice: json.orNull(json.text("the coach's words")),
  zones: json.list('what is drilled', PLAN_ZONE),
  ...json.wholes({ first_of_day_reps: 'first reps of a day', warm_up_reps: 'reps to warm up' }),
  blocks: json.list(
    'in their order',
    json.object('One block', {
      ...json.wholes({ reps: 'reps of all zones together' }),
      order: json.oneOfWords('how zones follow each other', 'blocked', 'serial', 'shuffled'),
      vary: json.orNull(
        json.object('factors that targets are varied by, from and to', {
          level_factor: range('of the level'),
          release_length_factor: range('of the length of the release'),
        }),
      ),
    }),
  ),
  feedback: json.object('How much is shown', {
    rule: json.oneOfWords('which rule', 'scheduled', 'thinning'),
    counted: json.orNull(json.oneOfWords('which reps are counted', 'practice', 'life')),
    stages: json.orNull(
      json.list(
        'stages of a thinning rule',
        json.object('One stage', {
          ...json.wholesOrNull({ until_rep: 'first rep, from 0, of the next stage' }),
          ...json.numbers({ shown_share: 'share of shown reps' }),
        }),
      ),
    ),
    ...json.wholes({ most_shown_in_a_row: 'how many reps in a row are shown at most' }),
  }),
  hard_reps: json.object('When the leg has had enough', {
    ...json.numbers({ from_level: 'level from which a rep is hard' }),
    ...json.wholes({ most: 'hard reps in a practice at most' }),
    ...json.numbers({
      fatigue_limit: 'critical differences from which the driver is told to stop',
    }),
  }),
  condition: json.orNull(json.text('what differs in these practices')),
  carry_over: json.orNull(
    json.object('the check on something not practised this week', {
      ...json.wholes({ reps: 'how many' }),
      zones: json.list('tried in turn', PLAN_ZONE),
    }),
  ),
  promote: json.orNull(
    json.object('when a target is followed well enough', {
      ...json.wholes({
        in_corridor_reps: 'so many',
        of_hidden_reps: 'of the last hidden',
      }),
      ...json.numbers({ corridor_share: 'in the corridor over this share of the release' }),
    }),
  ),
  ...json.numbersOrNull({
    rest_s: 'rest between reps',
    countdown_s: 'countdown',
    stint_gap_s: 'road between two stops',
  }),
  ...json.numbers({ late_call_share: 'share of live-car reps with a late call' }),
};

export const PLAN_LIST_ANSWER: AnswerSchema = profileListAnswer('plans', PLAN);

export const PLAN_SHOW_ANSWER: AnswerSchema = json.object(
  'A practice plan, defaults filled in',
  PLAN,
);

const EVENT: AnswerFields = {
  id: json.text('id of the event'),
  name: json.text('its name'),
  advice: json.orNull(json.text("the coach's words")),
  date: json.text('first day'),
  ...json.wholes({ days_left: 'days until then, negative after it' }),
  zones: json.list(
    'in the order of the lap',
    json.object('One zone', {
      corner: json.text('corner'),
      car: json.text('car'),
      variant: json.orNull(json.text('variant')),
      ...json.numbersOrNull({
        to_next_m: 'road to the next brake point, where the file says metres',
        to_next_s: 'road to the next brake point, where the file says seconds',
      }),
    }),
  ),
  sessions: json.list(
    'in the order of the event',
    json.object('One session', {
      session: json.text('which'),
      variant: json.orNull(json.text('variant of all corners')),
      ...json.numbers({ late_call_share: 'share of reps with a late call' }),
    }),
  ),
  brakes_stay_hot: json.flag('brakes keep their heat from zone to zone'),
};

export const EVENT_LIST_ANSWER: AnswerSchema = profileListAnswer('events', EVENT);

export const EVENT_SHOW_ANSWER: AnswerSchema = json.object('An event, defaults filled in', {
  ...EVENT,
  lap: json.object('The lap of one session', {
    session: json.text('which'),
    zones: json.list(
      'in driving order',
      json.object('One zone', {
        corner: json.text('id of the corner'),
        car: json.text('id of the car'),
        variant: json.text('variant'),
        ...json.numbers({
          brake_point_m: 'brake point from turn-in, negative before it',
          slowest_speed_mps: 'slowest speed',
          gap_s: 'road to the next brake point',
        }),
      }),
    ),
  }),
});

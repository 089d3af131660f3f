import {
  flag,
  list,
  numbers,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { profileListAnswer } from './profile-answers.ts';

const CORNER: AnswerFields = {
  corner: orNull(text('corner of a live car')),
  car: orNull(text('its car')),
  variant: orNull(text('its variant; the first of the sheet where none is named')),
};

const PLAN_ZONE = object('A target over time, or a corner with a live car', {
  target: orNull(text('target over time')),
  live: orNull(
    object('what follows once the driver is promoted', {
      corner: text('corner'),
      car: text('car'),
      variant: orNull(text('variant')),
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
  id: text('id of the plan'),
  name: text('its name'),
  advice: orNull(text("the coach's words")),
  zones: list('what is drilled', PLAN_ZONE),
  ...wholes({ first_of_day_reps: 'first reps of a day', warm_up_reps: 'reps to warm up' }),
  blocks: list(
    'in their order',
    object('One block', {
      ...wholes({ reps: 'reps of all zones together' }),
      order: oneOfWords('how zones follow each other', 'blocked', 'serial', 'shuffled'),
      vary: orNull(
        object('factors that targets are varied by, from and to', {
          level_factor: range('of the level'),
          release_length_factor: range('of the length of the release'),
        }),
      ),
    }),
  ),
  feedback: object('How much is shown', {
    rule: oneOfWords('which rule', 'scheduled', 'thinning'),
    counted: orNull(oneOfWords('which reps are counted', 'practice', 'life')),
    stages: orNull(
      list(
        'stages of a thinning rule',
        object('One stage', {
          ...wholesOrNull({ until_rep: 'first rep, from 0, of the next stage' }),
          ...numbers({ shown_share: 'share of shown reps' }),
        }),
      ),
    ),
    ...wholes({ most_shown_in_a_row: 'how many reps in a row are shown at most' }),
  }),
  hard_reps: object('When the leg has had enough', {
    ...numbers({ from_level: 'level from which a rep is hard' }),
    ...wholes({ most: 'hard reps in a practice at most' }),
    ...numbers({ fatigue_limit: 'critical differences from which the driver is told to stop' }),
  }),
  condition: orNull(text('what differs in these practices')),
  carry_over: orNull(
    object('the check on something not practised this week', {
      ...wholes({ reps: 'how many' }),
      zones: list('tried in turn', PLAN_ZONE),
    }),
  ),
  promote: orNull(
    object('when a target is followed well enough', {
      ...wholes({
        in_corridor_reps: 'so many',
        of_hidden_reps: 'of the last hidden',
      }),
      ...numbers({ corridor_share: 'in the corridor over this share of the release' }),
    }),
  ),
  ...numbersOrNull({
    rest_s: 'rest between reps',
    countdown_s: 'countdown',
    stint_gap_s: 'road between two stops',
  }),
  ...numbers({ late_call_share: 'share of live-car reps with a late call' }),
};

export const PLAN_LIST_ANSWER: AnswerSchema = profileListAnswer('plans', PLAN);

export const PLAN_SHOW_ANSWER: AnswerSchema = object('A practice plan, defaults filled in', PLAN);

const EVENT: AnswerFields = {
  id: text('id of the event'),
  name: text('its name'),
  advice: orNull(text("the coach's words")),
  date: text('first day'),
  ...wholes({ days_left: 'days until then, negative after it' }),
  zones: list(
    'in the order of the lap',
    object('One zone', {
      corner: text('corner'),
      car: text('car'),
      variant: orNull(text('variant')),
      ...numbersOrNull({
        to_next_m: 'road to the next brake point, where the file says metres',
        to_next_s: 'road to the next brake point, where the file says seconds',
      }),
    }),
  ),
  sessions: list(
    'in the order of the event',
    object('One session', {
      session: text('which'),
      variant: orNull(text('variant of all corners')),
      ...numbers({ late_call_share: 'share of reps with a late call' }),
    }),
  ),
  brakes_stay_hot: flag('brakes keep their heat from zone to zone'),
};

export const EVENT_LIST_ANSWER: AnswerSchema = profileListAnswer('events', EVENT);

export const EVENT_SHOW_ANSWER: AnswerSchema = object('An event, defaults filled in', {
  ...EVENT,
  lap: object('The lap of one session', {
    session: text('which'),
    zones: list(
      'in driving order',
      object('One zone', {
        corner: text('id of the corner'),
        car: text('id of the car'),
        variant: text('variant'),
        ...numbers({
          brake_point_m: 'brake point from turn-in, negative before it',
          slowest_speed_mps: 'slowest speed',
          gap_s: 'road to the next brake point',
        }),
      }),
    ),
  }),
});

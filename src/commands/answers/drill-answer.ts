import {
  eitherOf,
  list,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  text,
  texts,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { DIAGNOSIS_ANSWER } from './diagnosis-answer.ts';
import { CAUSE_KIND, outcomeAnswer } from './outcome-answer.ts';

const LINE: AnswerFields = {
  ...wholes({ rep: 'its number, from 1' }),
  feedback: oneOfWords('what the driver saw', 'shown', 'hidden', 'first-of-day'),
  voided: orNull(oneOfWords('why it does not count', 'aborted', 'device lost')),
  call: orNull(text('the late call it was driven with')),
  sentence: text('what was said; empty where nothing was'),
  warning: orNull(text('that the leg is tired')),
  outcome: eitherOf('its score, or why there is none', ...outcomeAnswer('Outcome'), {
    type: 'null',
  }),
};

const SUMMARY: AnswerFields = {
  ...wholes({ reps: 'scored reps', aborted: 'aborted reps' }),
  ...numbersOrNull({
    median_score: 'median score',
    median_release_error_level: 'median error of the release, root mean square',
    average_error_level: 'mean error of the release, heavy is positive',
    spread_level: 'spread between reps over the release',
  }),
  cause: CAUSE_KIND,
  ...wholes({ cause_reps: 'with that cause' }),
  sentence: text('what to change in the next block'),
  diagnosis: DIAGNOSIS_ANSWER,
};

const BLOCK = object('A block on one target, or of one corner with the live car', {
  target: text('id of the target'),
  target_version: text('hash of its curve'),
  car: orNull(text('id of the live car')),
  corner: orNull(text('id of the corner of the live car')),
  variant: orNull(text('variant of that corner')),
  driver: text('whose reps they are'),
  ...wholesOrNull({ practice: 'number of the practice in the history' }),
  reps: list('in driving order', object('One rep', LINE)),
  block: orNull(object('What the block came to', SUMMARY)),
});

const PLANNED: AnswerFields = {
  driver: text('whose reps they are'),
  ...wholesOrNull({ practice: 'number of the practice in the history' }),
  blocks: list(
    'in driving order',
    object('One block', {
      ...wholes({ block: 'its number, from 1' }),
      phase: oneOfWords('what it is for', 'first-of-day', 'warm-up', 'block', 'carry-over'),
      order: oneOfWords('how zones follow each other', 'blocked', 'serial', 'shuffled'),
      reps: list(
        'in driving order',
        object('One rep', { target: text('id of its target'), ...LINE }),
      ),
      targets: list(
        'what it came to, target by target',
        object('One target', { name: text('its name'), ...SUMMARY }),
      ),
      notes: texts('what the driver was told between blocks'),
    }),
  ),
};

const CORNER_FORM: AnswerFields = {
  corner: text('name of the corner'),
  ...numbersOrNull({
    expected_error_level: 'error expected on the first lap',
    release_error_level: 'median error of the release',
  }),
  ...wholes({ hidden_reps: 'hidden' }),
  ...numbersOrNull({
    spread_level: 'spread between reps',
    first_of_day_loss_level: 'what the first reps of a day lose',
  }),
  ...wholes({ first_of_day_reps: 'first-of-day' }),
  cause: CAUSE_KIND,
  ...numbersOrNull({ time_lost_s: 'median time lost, slow is positive' }),
  last_date: orNull(text('day of the last rep')),
};

const PLAN = object('A practice by a plan', { plan: text('name of the plan'), ...PLANNED });

const EVENT = object('The laps of an event', {
  plan: orNull(text('id of the plan')),
  ...PLANNED,
  event: text('id of the event'),
  session: text('which session'),
  ...wholes({ days_left: 'days until the event, negative after it' }),
  tonight: list(
    'what to work on, most worth first',
    object('One corner', {
      ...CORNER_FORM,
      tied_with: orNull(text('corner that is as much worth')),
      reason: text('why this one'),
    }),
  ),
  not_ranked: list('corners with too few reps', object('One corner', CORNER_FORM)),
  not_ranked_reason: orNull(text('why there is no more to work on')),
});

/** `drill --headless --json`. */
export const DRILL_ANSWER: AnswerSchema = eitherOf(
  'What was drilled: a block, a plan by --plan, or laps by --event',
  BLOCK,
  PLAN,
  EVENT,
);

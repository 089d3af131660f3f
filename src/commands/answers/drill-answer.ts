import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { DIAGNOSIS_ANSWER } from './diagnosis-answer.ts';
import { CAUSE_KIND, outcomeAnswer } from './outcome-answer.ts';

const LINE: AnswerFields = {
  ...json.wholes({ rep: 'its number, from 1' }),
  feedback: json.oneOfWords('what the driver saw', 'shown', 'hidden', 'first-of-day'),
  voided: json.orNull(json.oneOfWords('why it does not count', 'aborted', 'device lost')),
  call: json.orNull(json.text('the late call it was driven with')),
  sentence: json.text('what was said; empty where nothing was'),
  warning: json.orNull(json.text('that the leg is tired')),
  outcome: json.eitherOf('its score, or why there is none', ...outcomeAnswer('Outcome'), {
    type: 'null',
  }),
};

const TROUBLES = json.list(
  'what three reps or more share: a speed far off, then what costs most',
  json.object('One of them', {
    part: json.oneOfWords(
      'of the braking zone',
      ...['slowest speed', 'release', 'hit', 'smooth', 'brake point', 'gears', 'no rep'],
    ),
    words: json.text('what was wrong, in words for the driver'),
    change: json.text('what to do about it'),
    ...json.wholes({ reps_count: 'reps with it', of_count: 'reps that were looked at for it' }),
  }),
);

const SUMMARY: AnswerFields = {
  ...json.wholes({ reps: 'scored reps', aborted: 'aborted reps' }),
  ...json.numbersOrNull({
    median_score: 'median score',
    median_release_error_level: 'median error of the release, root mean square',
    average_error_level: 'mean error of the release, heavy is positive',
    spread_level: 'spread between reps over the release',
  }),
  cause: CAUSE_KIND,
  ...json.wholes({ cause_reps: 'with that cause' }),
  troubles: TROUBLES,
  sentence: json.text('what to change in the next block'),
  diagnosis: DIAGNOSIS_ANSWER,
};

const BLOCK = json.object('A block on one target, or of one corner with the live car', {
  target: json.text('id of the target'),
  target_version: json.text('hash of its curve'),
  car: json.orNull(json.text('id of the live car')),
  corner: json.orNull(json.text('id of the corner of the live car')),
  variant: json.orNull(json.text('variant of that corner')),
  driver: json.text('whose reps they are'),
  ...json.wholesOrNull({ practice: 'number of the practice in the history' }),
  reps: json.list('in driving order', json.object('One rep', LINE)),
  block: json.orNull(json.object('What the block came to', SUMMARY)),
});

const PLANNED: AnswerFields = {
  driver: json.text('whose reps they are'),
  ...json.wholesOrNull({ practice: 'number of the practice in the history' }),
  blocks: json.list(
    'in driving order',
    json.object('One block', {
      ...json.wholes({ block: 'its number, from 1' }),
      phase: json.oneOfWords('what it is for', 'first-of-day', 'warm-up', 'block', 'carry-over'),
      order: json.oneOfWords('how zones follow each other', 'blocked', 'serial', 'shuffled'),
      reps: json.list(
        'in driving order',
        json.object('One rep', { target: json.text('id of its target'), ...LINE }),
      ),
      targets: json.list(
        'what it came to, target by target',
        json.object('One target', { name: json.text('its name'), ...SUMMARY }),
      ),
      notes: json.texts('what the driver was told between blocks'),
    }),
  ),
};

const CORNER_FORM: AnswerFields = {
  corner: json.text('name of the corner'),
  ...json.numbersOrNull({
    expected_error_level: 'error expected on the first lap',
    release_error_level: 'median error of the release',
  }),
  ...json.wholes({ hidden_reps: 'hidden' }),
  ...json.numbersOrNull({
    spread_level: 'spread between reps',
    first_of_day_loss_level: 'what the first reps of a day lose',
  }),
  ...json.wholes({ first_of_day_reps: 'first-of-day' }),
  cause: CAUSE_KIND,
  troubles: TROUBLES,
  ...json.numbersOrNull({ time_lost_s: 'median time lost, slow is positive' }),
  last_date: json.orNull(json.text('day of the last rep')),
};

const PLAN = json.object('A practice by a plan', {
  plan: json.text('name of the plan'),
  ...PLANNED,
});

const EVENT = json.object('The laps of an event', {
  plan: json.orNull(json.text('id of the plan')),
  ...PLANNED,
  event: json.text('id of the event'),
  session: json.text('which session'),
  ...json.wholes({ days_left: 'days until the event, negative after it' }),
  tonight: json.list(
    'what to work on, most worth first',
    json.object('One corner', {
      ...CORNER_FORM,
      tied_with: json.orNull(json.text('corner that is as much worth')),
      reason: json.text('why this one'),
    }),
  ),
  not_ranked: json.list('corners with too few reps', json.object('One corner', CORNER_FORM)),
  not_ranked_reason: json.orNull(json.text('why there is no more to work on')),
});

/** `drill --headless --json`. */
export const DRILL_ANSWER: AnswerSchema = json.eitherOf(
  'What was drilled: a block, a plan by --plan, or laps by --event',
  BLOCK,
  PLAN,
  EVENT,
);

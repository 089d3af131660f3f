import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

/** What a model leaves out. */
export const LEFT_OUT_ANSWER: AnswerSchema = json.list(
  'what the model leaves out',
  json.object('One thing', {
    what: json.text('what is left out'),
    bias: json.oneOfWords(
      'which way a target errs for it',
      'brake point too late',
      'brake point too early',
      'level too high',
      'level too low',
      'downshift too late',
      'either way',
    ),
    because: json.text('the reason'),
  }),
);

/** The corner, car and variant that a live car drives. */
export const LIVE_NAMES: AnswerFields = {
  car: json.text('id of the car'),
  corner: json.text('id of the corner'),
  variant: json.text('variant of the corner'),
};

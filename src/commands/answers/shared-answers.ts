import { list, object, oneOfWords, text } from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';

/** What a model leaves out. */
export const LEFT_OUT_ANSWER: AnswerSchema = list(
  'what the model leaves out',
  object('One thing', {
    what: text('what is left out'),
    bias: oneOfWords(
      'which way a target errs for it',
      'brake point too late',
      'brake point too early',
      'level too high',
      'level too low',
      'downshift too late',
      'either way',
    ),
    because: text('the reason'),
  }),
);

/** The corner, car and variant that a live car drives. */
export const LIVE_NAMES: AnswerFields = {
  car: text('id of the car'),
  corner: text('id of the corner'),
  variant: text('variant of the corner'),
};

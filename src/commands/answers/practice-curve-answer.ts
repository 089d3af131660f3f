import { list, numbersOrNull, object, orNull, text, wholes } from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

/** How errors fall with practice. */
export const CURVE: AnswerSchema = object('the curve over practices that fits best', {
  ...wholes({ practices: 'that it rests on' }),
  chosen: orNull(text('kind of curve')),
  ...numbersOrNull({
    plateau_level: 'where it levels off; not under 20 practices',
    plateau_standard_error_level: 'standard error of that',
  }),
  ...wholes({ missing_practices_for_plateau: 'practices missing for it' }),
  fits: list(
    'all kinds tried',
    object('One kind', {
      family: text('kind of curve'),
      ...numbersOrNull({
        rate_per_practice: 'rate of an exponential, for each practice',
        exponent: 'exponent of a power',
        corrected_information: 'corrected information criterion, smaller is better',
      }),
    }),
  ),
});

import * as json from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

/** How errors fall with practice. */
export const CURVE: AnswerSchema = json.object('the curve over practices that fits best', {
  ...json.wholes({ practices: 'that it rests on' }),
  chosen: json.orNull(json.text('kind of curve')),
  ...json.numbersOrNull({
    plateau_level: 'where it levels off; not under 20 practices',
    plateau_standard_error_level: 'standard error of that',
  }),
  ...json.wholes({ missing_practices_for_plateau: 'practices missing for it' }),
  fits: json.list(
    'all kinds tried',
    json.object('One kind', {
      family: json.text('kind of curve'),
      ...json.numbersOrNull({
        rate_per_practice: 'rate of an exponential, for each practice',
        exponent: 'exponent of a power',
        corrected_information: 'corrected information criterion, smaller is better',
      }),
    }),
  ),
});

import { intervals, list, numbersOrNull, object, text, wholes } from './answer-parts.ts';
import type { AnswerFields } from './answer-schema.ts';
import { trend } from './change-answers.ts';

const agreements = (before: string): AnswerFields => ({
  ...numbersOrNull({ [`${before}timing_agreement`]: 'felt against measured timing' }),
  ...intervals({ [`${before}timing_agreement_interval`]: 'of that' }),
  ...numbersOrNull({ [`${before}amount_agreement`]: 'felt against measured amount' }),
  ...intervals({ [`${before}amount_agreement_interval`]: 'of that' }),
});

/** What was felt against what was measured. */
export const FELT: AnswerFields = {
  ...agreements('felt_'),
  ...wholes({ felt_rated_reps: 'hidden and rated', felt_missing_reps: 'missing for an agreement' }),
  felt_timing_trend: trend('Agreement on timing by week', 'agreement'),
  felt_amount_trend: trend('Agreement on amount by week', 'agreement'),
  felt_weeks: list(
    'weeks with ratings',
    object('One week', {
      iso_week: text('ISO 8601 week'),
      ...wholes({ rated_reps: 'rated' }),
      ...agreements(''),
    }),
  ),
};

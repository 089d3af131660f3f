import * as json from './answer-parts.ts';
import type { AnswerFields } from './answer-schema.ts';
import { trend } from './change-answers.ts';

const agreements = (before: string): AnswerFields => ({
  ...json.numbersOrNull({ [`${before}timing_agreement`]: 'felt against measured timing' }),
  ...json.intervals({ [`${before}timing_agreement_interval`]: 'of that' }),
  ...json.numbersOrNull({ [`${before}amount_agreement`]: 'felt against measured amount' }),
  ...json.intervals({ [`${before}amount_agreement_interval`]: 'of that' }),
});

/** What was felt against what was measured. */
export const FELT: AnswerFields = {
  ...agreements('felt_'),
  ...json.wholes({
    felt_rated_reps: 'hidden and rated',
    felt_missing_reps: 'missing for an agreement',
  }),
  felt_timing_trend: trend('Agreement on timing by week', 'agreement'),
  felt_amount_trend: trend('Agreement on amount by week', 'agreement'),
  felt_weeks: json.list(
    'weeks with ratings',
    json.object('One week', {
      iso_week: json.text('ISO 8601 week'),
      ...json.wholes({ rated_reps: 'rated' }),
      ...agreements(''),
    }),
  ),
};

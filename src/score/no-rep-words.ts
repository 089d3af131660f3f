import type { NoRepReason } from './rep-score.ts';

/** Why there was no rep, in the driver's words. */
export const NO_REP_WORDS: Readonly<Record<NoRepReason, string>> = {
  'never braked': 'no braking was seen',
  'peak below a tenth of the target': 'hardly any pressure',
  'too few samples': 'too little was recorded to score',
  'wheel never turned in': 'the wheel never turned in, so nothing was asked for',
  'braked too late': 'braked too late to make the corner',
  'stopped before the release': 'stopped before there was anything to release',
};

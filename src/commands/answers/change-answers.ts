import * as json from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

/** Of a change or a trend; null while too little is known. */
export const VERDICT: AnswerSchema = json.orNull(
  json.oneOfWords('what may be said of the change', 'improving', 'no clear change', 'worsening'),
);

/** A spread now against before. */
export const change = (what: string, unit: 'level' | 's'): AnswerSchema =>
  json.object(what, {
    verdict: VERDICT,
    hangs_on_one_practice: json.flag('without one of the practices nothing could be said'),
    ...json.numbersOrNull({ [`before_spread_${unit}`]: 'standard deviation before' }),
    [`before_interval_${unit}`]: json.interval('of that'),
    ...json.wholes({ before_reps: 'before', before_missing_reps: 'missing before' }),
    ...json.numbersOrNull({ [`now_spread_${unit}`]: 'standard deviation now' }),
    [`now_interval_${unit}`]: json.interval('of that'),
    ...json.wholes({ now_reps: 'now', now_missing_reps: 'missing now' }),
    ...json.numbersOrNull({ ratio: 'now against before' }),
    ratio_interval: json.interval('of that ratio'),
  });

/** A trend over weeks. */
export const trend = (what: string, unit: 'level' | 'agreement'): AnswerSchema =>
  json.object(what, {
    verdict: VERDICT,
    ...json.wholes({ weeks: 'that it rests on', missing_weeks: 'missing for a verdict' }),
    ...json.numbersOrNull({ [`slope_${unit}_per_week`]: 'slope by Theil and Sen' }),
    [`slope_interval_${unit}_per_week`]: json.interval('of that slope'),
    ...json.numbersOrNull({
      mann_kendall_statistic: 'S of Mann and Kendall',
      mann_kendall_chance: 'chance of such an S without a trend, both sides',
    }),
    mann_kendall_method: json.orNull(
      json.oneOfWords('how that chance was had', 'counted', 'normal'),
    ),
    ...json.numbersOrNull({ autocorrelation: 'of neighbouring weeks' }),
    is_autocorrelated: json.flag('too much so to trust the chance'),
  });

import * as json from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { DAY, WEEK } from './calendar-answers.ts';
import { change, trend } from './change-answers.ts';
import { CHART } from './control-chart-answer.ts';
import { PHASE } from './diagnosis-answer.ts';
import { FELT } from './felt-answer.ts';
import { CURVE } from './practice-curve-answer.ts';

/** Whose reps a series holds. */
export const NAMES: AnswerFields = {
  driver: json.text('whose reps'),
  source: json.text('where the reps came from'),
  foot: json.text('which foot'),
  condition: json.orNull(json.text('what else differed')),
};

const SPREAD_CURVE = json.object('spread of the last practice, moment by moment of its target', {
  day: json.day('day of the practice'),
  ...json.wholes({ hidden_reps: 'hidden' }),
  ...json.numbers({ step_s: 'step of time' }),
  along_from_turn_in_m: json.orNull(
    json.list('places of the curve with the live car (m from turn-in)', { type: 'number' }),
  ),
  ...json.columns({ spread_level: 'standard deviation between reps' }),
  phases: json.list(
    'in the order of the zone',
    json.object('One phase', {
      phase: PHASE,
      ...json.numbersOrNull({ spread_level: 'spread along it' }),
    }),
  ),
  reading: json.text('what is to be seen'),
});

const SERIES = json.object('One driver on one target under one condition', {
  ...NAMES,
  target_id: json.text('id of the target'),
  sentence: json.text('the headline'),
  trend_sentence: json.text('the trend of first-of-day reps in words'),
  hidden_trend_sentence: json.text('the trend of hidden reps in words'),
  comparable_since: json.text('day of the last break in comparability'),
  spread_change: json.object('Spread now against four weeks before', {
    now_from: json.text('first day of now'),
    now_to: json.text('last day of now'),
    before_from: json.text('first day of before'),
    before_to: json.text('last day of before'),
    broken_on: json.orNull(json.text('day of a break in between')),
    average_error: change('Spread of the average error', 'level'),
    start_of_release: change('Spread of the start of release', 's'),
  }),
  first_of_day_trend: trend('Error of first-of-day reps by week', 'level'),
  hidden_trend: trend('Error of hidden reps by week', 'level'),
  typical_error_interval_level: json.interval('of the typical error'),
  ...json.numbersOrNull({
    typical_error_level: 'typical error from practice to practice',
    smallest_worthwhile_change_level: 'smallest change worth anything',
    clear_change_level: 'change that is no typical error',
    repeatability_level: 'within a practice (ISO 5725)',
    between_practices_level: 'between practices (ISO 5725)',
    reproducibility_level: 'both together (ISO 5725)',
  }),
  ...FELT,
  practice_curve: json.orNull(CURVE),
  control_chart: CHART,
  weeks: json.list('in their order, empty ones too', WEEK),
  days: json.list('in their order', DAY),
  spread_curve: json.orNull(SPREAD_CURVE),
  spread_curve_missing: json.orNull(json.text('why there is no spread curve')),
});

/** One series after the other. */
export const SERIES_LIST: AnswerSchema = json.list(
  'one after the other; empty without reps',
  SERIES,
);

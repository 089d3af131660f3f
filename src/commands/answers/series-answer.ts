import {
  columns,
  day,
  list,
  numbers,
  numbersOrNull,
  object,
  orNull,
  text,
  wholes,
} from './answer-parts.ts';
import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { DAY, WEEK } from './calendar-answers.ts';
import { change, trend } from './change-answers.ts';
import { CHART } from './control-chart-answer.ts';
import { PHASE } from './diagnosis-answer.ts';
import { FELT } from './felt-answer.ts';
import { CURVE } from './practice-curve-answer.ts';

/** Whose reps a series holds. */
export const NAMES: AnswerFields = {
  driver: text('whose reps'),
  source: text('where the reps came from'),
  foot: text('which foot'),
  condition: orNull(text('what else differed')),
};

const SPREAD_CURVE = object('spread of the last practice, moment by moment of its target', {
  day: day('day of the practice'),
  ...wholes({ hidden_reps: 'hidden' }),
  ...numbers({ step_s: 'step of time' }),
  along_from_turn_in_m: orNull(
    list('places of the curve with the live car (m from turn-in)', { type: 'number' }),
  ),
  ...columns({ spread_level: 'standard deviation between reps' }),
  phases: list(
    'in the order of the zone',
    object('One phase', { phase: PHASE, ...numbersOrNull({ spread_level: 'spread along it' }) }),
  ),
  reading: text('what is to be seen'),
});

const SERIES = object('One driver on one target under one condition', {
  ...NAMES,
  target_id: text('id of the target'),
  sentence: text('the headline'),
  trend_sentence: text('the trend of first-of-day reps in words'),
  hidden_trend_sentence: text('the trend of hidden reps in words'),
  comparable_since: text('day of the last break in comparability'),
  spread_change: object('Spread now against four weeks before', {
    now_from: text('first day of now'),
    now_to: text('last day of now'),
    before_from: text('first day of before'),
    before_to: text('last day of before'),
    broken_on: orNull(text('day of a break in between')),
    average_error: change('Spread of the average error', 'level'),
    start_of_release: change('Spread of the start of release', 's'),
  }),
  first_of_day_trend: trend('Error of first-of-day reps by week', 'level'),
  hidden_trend: trend('Error of hidden reps by week', 'level'),
  ...numbersOrNull({
    typical_error_level: 'typical error from practice to practice',
    smallest_worthwhile_change_level: 'smallest change worth anything',
    clear_change_level: 'change that is no typical error',
    repeatability_level: 'within a practice (ISO 5725)',
    between_practices_level: 'between practices (ISO 5725)',
    reproducibility_level: 'both together (ISO 5725)',
  }),
  ...FELT,
  practice_curve: orNull(CURVE),
  control_chart: CHART,
  weeks: list('in their order, empty ones too', WEEK),
  days: list('in their order', DAY),
  spread_curve: orNull(SPREAD_CURVE),
  spread_curve_missing: orNull(text('why there is no spread curve')),
});

/** One series after the other. */
export const SERIES_LIST: AnswerSchema = list('one after the other; empty without reps', SERIES);

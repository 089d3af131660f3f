import { pooledSpread } from '../../consistency/change/pooled-spread.ts';
import { REPS_FOR_MEDIAN, REPS_FOR_SPREAD } from '../../consistency/estimate.ts';
import { measureColumns } from '../../consistency/measure-columns.ts';
import { median } from '../../consistency/median.ts';
import { allReps } from '../../consistency/rep-columns.ts';
import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { type PracticeValues, practiceValues } from '../../consistency/weeks/practice-values.ts';
import { REPS_FOR_WEEK } from '../../consistency/weeks/week-rows.ts';
import { percentText } from '../../number-text.ts';

/** The corner may have been practised all the same: on a target over time, or in another car. */
const NOTHING = 'no reps yet in this car and variant';

/**
 * How repeatable the foot is in a corner: hidden reps, first-of-day reps, and of which time and conditions.
 *
 * @param measures that compare with each other, oldest first
 */
export function consistencyLines(measures: readonly RepMeasure[]): readonly string[] {
  const [first, newest] = [measures[0], measures.at(-1)];
  if (first === undefined || newest === undefined) return [NOTHING];
  const { source, foot, condition } = newest.conditions;
  const days = first.day === newest.day ? newest.day : `${first.day} to ${newest.day}`;
  const facts = [newest.driver, source, `${foot} foot`, ...(condition === null ? [] : [condition])];
  const practices = practiceValues(allReps(measureColumns(measures)));
  const hidden = practices.flatMap((one) => one.hidden.releaseErrorLevel);
  const firstOfDay = practices.flatMap((one) => one.firstOfDay.releaseErrorLevel);
  return [
    `hidden reps: ${errorText(hidden, REPS_FOR_MEDIAN)}; ${spreadText(practices)}`,
    `first of the day: ${errorText(firstOfDay, REPS_FOR_WEEK)}`,
    `${days}; ${facts.join(', ')}`,
  ];
}

function errorText(values: readonly number[], needed: number): string {
  const value = values.length < needed ? null : median(values);
  if (value === null) return `${values.length} of ${needed} reps for a median`;
  return `release error ${percentText(value, 1)} (median of ${values.length})`;
}

/** From rep to rep within a practice. */
function spreadText(practices: readonly PracticeValues[]): string {
  const spread = pooledSpread(practices.map(({ hidden }) => hidden.averageErrorLevel));
  if (spread === null || spread.values < REPS_FOR_SPREAD)
    return `${spread?.values ?? 0} of ${REPS_FOR_SPREAD} reps for a spread`;
  return `spread ${percentText(spread.deviation, 1)} of full scale`;
}

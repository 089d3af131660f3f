import { measureColumns } from '../measure-columns.ts';
import { allReps } from '../rep-columns.ts';
import type { RepMeasure } from '../rep-measure.ts';
import { segmentsOf } from './segments.ts';
import { seriesOf } from './series.ts';

/**
 * Of all reps those that compare with the newest: its driver, target, source, foot and condition, since the last break.
 *
 * @param measures oldest first
 */
export function sinceBreak(measures: readonly RepMeasure[]): RepMeasure[] {
  const all = seriesOf(allReps(measureColumns(measures)));
  const own = all.find(({ reps }) => reps.places.at(-1) === measures.length - 1);
  const newest = own === undefined ? undefined : segmentsOf(own.reps).at(-1);
  return Array.from(newest?.reps.places ?? [], (place) => measures[place]!);
}

import { addDays } from '../../consistency/iso-week.ts';
import { measureColumns } from '../../consistency/measure-columns.ts';
import { allReps } from '../../consistency/rep-columns.ts';
import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { segmentsOf } from '../../consistency/weeks/segments.ts';
import { seriesOf } from '../../consistency/weeks/series.ts';

/** Figures of a brief are of the last four weeks of practice: older ones are of another driver. */
const DAYS = 28;

/**
 * Of all reps those that compare with the newest: its driver, source, foot and condition, since the last break, in the
 * four weeks before it.
 *
 * @param reps oldest first
 */
export function comparableReps(reps: readonly RepMeasure[]): readonly RepMeasure[] {
  const newest = reps.at(-1);
  if (newest === undefined) return [];
  const all = seriesOf(allReps(measureColumns(reps)));
  const own = all.find((series) => series.reps.places.at(-1) === reps.length - 1);
  const segment = own === undefined ? undefined : segmentsOf(own.reps).at(-1);
  const from = addDays(newest.day, 1 - DAYS);
  return Array.from(segment?.reps.places ?? [], (place) => reps[place]!).filter(
    ({ day }) => day >= from,
  );
}

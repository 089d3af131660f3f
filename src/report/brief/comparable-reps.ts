import { addDays } from '../../consistency/iso-week.ts';
import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { sinceBreak } from '../../consistency/weeks/since-break.ts';

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
  const from = addDays(newest.day, 1 - DAYS);
  return sinceBreak(reps).filter(({ day }) => day >= from);
}

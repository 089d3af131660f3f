import type { WeekRow } from '../../consistency/weeks/week-rows.ts';

/** A row of the weeks on an axis whose unit is one week. */
export interface PlacedWeek {
  readonly row: WeekRow;
  /** Weeks since the first. */
  readonly week: number;
  /** Its middle: rows of one week lie side by side in it. */
  readonly at: number;
  /** Where it begins. */
  readonly from: number;
}

const WEEK_MS = 7 * 86_400_000;

/** Places the rows: equal distances are equal times. */
export function placedWeeks(rows: readonly WeekRow[]): PlacedWeek[] {
  const firstMs = Date.parse(rows[0]?.monday ?? '1970-01-05');
  return rows.map((row) => {
    const week = Math.round((Date.parse(row.monday) - firstMs) / WEEK_MS);
    const same = rows.filter(({ monday }) => monday === row.monday);
    const width = 1 / same.length;
    const from = week - 0.5 + width * same.indexOf(row);
    return { row, week, at: from + width / 2, from };
  });
}

/** Weeks with a median one after the other: a line ends at a gap and wherever reps stop to compare. */
export function weekRuns(placed: readonly PlacedWeek[]): PlacedWeek[][] {
  const runs: PlacedWeek[][] = [];
  let isOpen = false;
  for (const week of placed) {
    const isKnown = week.row.hidden.medianReleaseErrorLevel.value !== null;
    if (isKnown && isOpen && week.row.changed.length === 0) runs.at(-1)!.push(week);
    else if (isKnown) runs.push([week]);
    isOpen = isKnown;
  }
  return runs.filter((run) => run.length > 1);
}

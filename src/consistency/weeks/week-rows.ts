import { pooledSpread } from '../change/pooled-spread.ts';
import { type Estimate, estimate, REPS_FOR_SPREAD } from '../estimate.ts';
import type { Interval } from '../interval.ts';
import { addDays, isoWeek, mondayOf } from '../iso-week.ts';
import { median } from '../median.ts';
import type { Conditions } from '../rep-measure.ts';
import { medianInterval } from '../summary/median-interval.ts';
import type { PracticeValues } from './practice-values.ts';
import type { Segment } from './segments.ts';

/** Errors of one kind of reps in one week. */
export interface WeekErrors {
  readonly medianReleaseErrorLevel: Estimate;
  /** Of the median, with the level it attains; null where the median is. */
  readonly interval: Interval | null;
}

/** One ISO week, or a part of it between two breaks. */
export interface WeekRow {
  readonly week: string;
  readonly monday: string;
  /** What changed since the reps before; nothing compares across it. */
  readonly changed: readonly (keyof Conditions)[];
  /** First day of what changed; null where nothing did. */
  readonly changedOn: string | null;
  readonly before: Conditions | null;
  /** Null in a week without practice. */
  readonly conditions: Conditions | null;
  /** Reps that ran to their end; 0 in a week without practice, which stays a gap. */
  readonly reps: number;
  readonly practices: number;
  readonly hidden: WeekErrors;
  readonly firstOfDay: WeekErrors;
  /** Spread of the average error from hidden rep to hidden rep within practices. */
  readonly spreadLevel: Estimate;
}

/** One set of first-of-day reps; their interval at 94 % is all five. */
export const REPS_FOR_WEEK = 5;

/**
 * A row for every week from the first rep to today, with gaps where nothing was driven, and a new row within a week
 * where conditions changed.
 *
 * @param today local date
 */
export function weekRows(segments: readonly Segment[], today: string): WeekRow[] {
  const rows: WeekRow[] = [];
  for (const segment of segments)
    for (const [place, { monday, practices }] of byWeek(segment.practices).entries()) {
      fillGaps(rows, monday);
      const isFirst = place === 0;
      rows.push({
        ...weekOf(monday, practices),
        changed: isFirst ? segment.changed : [],
        changedOn: isFirst && segment.changed.length > 0 ? practices[0]!.day : null,
        before: isFirst ? segment.from : null,
        conditions: segment.to,
      });
    }
  fillGaps(rows, addDays(mondayOf(today), 7));
  return rows;
}

/** Weeks without practice after the last row, up to this Monday. */
function fillGaps(rows: WeekRow[], end: string): void {
  const last = rows.at(-1);
  if (last === undefined) return;
  for (let monday = addDays(last.monday, 7); monday < end; monday = addDays(monday, 7))
    rows.push({
      ...weekOf(monday, []),
      changed: [],
      changedOn: null,
      before: null,
      conditions: null,
    });
}

interface Week {
  readonly monday: string;
  readonly practices: PracticeValues[];
}

function byWeek(practices: readonly PracticeValues[]): Week[] {
  const weeks: Week[] = [];
  for (const practice of practices) {
    const [last, monday] = [weeks.at(-1), mondayOf(practice.day)];
    if (last?.monday === monday) last.practices.push(practice);
    else weeks.push({ monday, practices: [practice] });
  }
  return weeks;
}

function weekOf(
  monday: string,
  practices: readonly PracticeValues[],
): Omit<WeekRow, 'changed' | 'changedOn' | 'before' | 'conditions'> {
  const spread = pooledSpread(practices.map(({ hidden }) => hidden.averageErrorLevel));
  return {
    week: isoWeek(monday),
    monday,
    reps: practices.reduce((sum, { reps }) => sum + reps, 0),
    practices: practices.filter(({ reps }) => reps > 0).length,
    hidden: errorsOf(practices.flatMap(({ hidden }) => hidden.releaseErrorLevel)),
    firstOfDay: errorsOf(practices.flatMap(({ firstOfDay }) => firstOfDay.releaseErrorLevel)),
    spreadLevel: {
      value: spread === null || spread.values < REPS_FOR_SPREAD ? null : spread.deviation,
      reps: spread?.values ?? 0,
      needed: REPS_FOR_SPREAD,
    },
  };
}

function errorsOf(values: readonly number[]): WeekErrors {
  const found = estimate(values, REPS_FOR_WEEK, median);
  return {
    medianReleaseErrorLevel: found,
    interval: found.value === null ? null : medianInterval(values),
  };
}

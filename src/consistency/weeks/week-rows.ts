import { pooledSpread } from '../change/pooled-spread.ts';
import { type Estimate, estimate, REPS_FOR_SPREAD } from '../estimate.ts';
import type { Interval } from '../interval.ts';
import { addDays, isoWeek, mondayOf } from '../iso-week.ts';
import { median } from '../median.ts';
import { type Reps, sharedOf } from '../rep-columns.ts';
import type { Conditions } from '../rep-measure.ts';
import { medianInterval } from '../summary/median-interval.ts';
import { type Pick, type PracticeValues, practicesOf } from './practices.ts';
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
    for (const [place, reps] of byWeek(segment.reps).entries()) {
      const monday = mondayOf(sharedOf(reps, 0).day);
      fillGaps(rows, monday);
      const isFirst = place === 0;
      rows.push({
        ...weekOf(monday, reps),
        changed: isFirst ? segment.changed : [],
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
    rows.push({ ...weekOf(monday, null), changed: [], before: null, conditions: null });
}

function byWeek({ columns, places }: Reps): Reps[] {
  const { shared, sharedAt } = columns;
  const starts: number[] = [];
  let last: string | null = null;
  for (let i = 0; i < places.length; i++) {
    const { day } = shared[sharedAt[places[i]!]!]!;
    if (day === last) continue;
    if (last === null || !isSameWeek(last, day)) starts.push(i);
    last = day;
  }
  return starts.map((start, i) => ({ columns, places: places.subarray(start, starts[i + 1]) }));
}

function isSameWeek(one: string, other: string): boolean {
  return mondayOf(one) === mondayOf(other);
}

/** @param reps null in a week without any */
function weekOf(
  monday: string,
  reps: Reps | null,
): Omit<WeekRow, 'changed' | 'before' | 'conditions'> {
  const averages = valuesOf(reps, { feedback: 'hidden', number: 'averageErrorLevel' });
  const spread = pooledSpread(averages.map(({ values }) => values));
  return {
    week: isoWeek(monday),
    monday,
    ...countsOf(reps),
    hidden: errorsOf(reps, 'hidden'),
    firstOfDay: errorsOf(reps, 'first-of-day'),
    spreadLevel: {
      value: spread === null || spread.values < REPS_FOR_SPREAD ? null : spread.deviation,
      reps: spread?.values ?? 0,
      needed: REPS_FOR_SPREAD,
    },
  };
}

/** Reps that ran to their end, and the practices they are of. */
function countsOf(all: Reps | null): { readonly reps: number; readonly practices: number } {
  if (all === null) return { reps: 0, practices: 0 };
  const { shared, sharedAt } = all.columns;
  const practices = new Set<number>();
  let reps = 0;
  let last = -1;
  for (let i = 0; i < all.places.length; i++) {
    const { voided, practiceId } = shared[sharedAt[all.places[i]!]!]!;
    if (voided !== null) continue;
    reps++;
    if (practiceId !== last) practices.add(practiceId);
    last = practiceId;
  }
  return { reps, practices: practices.size };
}

function valuesOf(reps: Reps | null, pick: Pick): PracticeValues[] {
  return reps === null ? [] : practicesOf(reps, pick);
}

function errorsOf(reps: Reps | null, feedback: 'hidden' | 'first-of-day'): WeekErrors {
  const picked = valuesOf(reps, { feedback, number: 'releaseErrorLevel' });
  const values = picked.flatMap((one) => one.values);
  const found = estimate(values, REPS_FOR_WEEK, median);
  return {
    medianReleaseErrorLevel: found,
    interval: found.value === null ? null : medianInterval(values),
  };
}

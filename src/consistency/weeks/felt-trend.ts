import {
  addedCounts,
  agreementIn,
  type FeltAgreement,
  feltCounts,
  ratingReader,
} from '../felt-agreement.ts';
import { mondayOf } from '../iso-week.ts';
import { type Reps, repsWhere } from '../rep-columns.ts';
import { type WeekTrend, weekTrend } from './week-trend.ts';

/** How well the driver felt the pedal in one week. */
export interface FeltWeek extends FeltAgreement {
  readonly monday: string;
}

/** Felt against measured, over all reps and as a trend of its own. */
export interface FeltTrend {
  readonly all: FeltAgreement;
  /** Oldest first; a week without a rated rep is not there. */
  readonly weeks: readonly FeltWeek[];
  /** Of the agreement week by week: the larger, the better. */
  readonly timing: WeekTrend;
  readonly amount: WeekTrend;
}

/**
 * One value per ISO week of the days the practices began on. A week with too few rated reps says how many there were,
 * and counts in no trend.
 *
 * @param reps that compare with each other
 */
export function feltTrend(reps: Reps): FeltTrend {
  // nearly all of years of reps have none
  const rated = repsWhere(reps, ({ selfRating }) => selfRating !== null);
  const ratingOf = ratingReader();
  const counted = byWeek(rated).map(([monday, places]) => ({
    monday,
    counts: feltCounts({ columns: reps.columns, places: Uint32Array.from(places) }, ratingOf),
  }));
  const weeks = counted.map(({ monday, counts }) => ({ monday, ...agreementIn(counts) }));
  const trend = (kind: 'timing' | 'amount'): WeekTrend =>
    weekTrend(
      weeks.flatMap((week) => {
        const agreement = week[kind];
        return agreement === null ? [] : [{ monday: week.monday, value: agreement.kappa }];
      }),
      'larger',
    );
  const all = agreementIn(addedCounts(counted.map(({ counts }) => counts)));
  return { all, weeks, timing: trend('timing'), amount: trend('amount') };
}

function byWeek({ columns, places }: Reps): [monday: string, places: number[]][] {
  const weeks = new Map<string, number[]>();
  let [last, own] = ['', [] as number[]];
  for (let i = 0; i < places.length; i++) {
    const { day } = columns.shared[columns.sharedAt[places[i]!]!]!;
    if (day !== last) {
      const monday = mondayOf(day);
      own = weeks.get(monday) ?? [];
      if (own.length === 0) weeks.set(monday, own);
      last = day;
    }
    own.push(places[i]!);
  }
  return [...weeks].sort(([a], [b]) => (a < b ? -1 : 1));
}

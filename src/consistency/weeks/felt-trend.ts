import { addedCounts, agreementIn, type FeltAgreement, feltCounts } from '../felt-agreement.ts';
import { mondayOf } from '../iso-week.ts';
import type { Reps } from '../rep-columns.ts';
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
  const mondayOfDay = eachOnce(mondayOf);
  const counted = [...feltCounts(reps, ({ day }) => mondayOfDay(day))]
    .map(([monday, counts]) => ({ monday, counts }))
    .sort((a, b) => (a.monday < b.monday ? -1 : 1));
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

/** Neighbours mostly ask for the same. */
function eachOnce(of: (text: string) => string): (text: string) => string {
  let [last, result] = ['', ''];
  return (text) => {
    if (text !== last) [last, result] = [text, of(text)];
    return result;
  };
}

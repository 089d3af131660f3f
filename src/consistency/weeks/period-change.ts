import { type SpreadChange, spreadChange } from '../change/spread-change.ts';
import { addDays } from '../iso-week.ts';
import { averageError, type PracticeValues, practicesOf, startError } from './practices.ts';
import type { Segment } from './segments.ts';

/** Two weeks up to today against two weeks four weeks earlier. Dates are the first and last day. */
export interface PeriodChange {
  readonly nowFrom: string;
  readonly nowTo: string;
  readonly beforeFrom: string;
  readonly beforeTo: string;
  /** Of the signed average error of the release, 0..1 of full scale. */
  readonly amount: SpreadChange;
  /** Of the start of release, in seconds. */
  readonly timing: SpreadChange;
  /** Day of the break after which there are no reps to compare with; null where that is not why. */
  readonly brokenOn: string | null;
}

const PERIOD_DAYS = 14;
const APART_DAYS = 28;

/**
 * The spread of hidden reps now against four weeks ago, within the newest segment.
 *
 * @param today local date
 */
export function periodChange(segments: readonly Segment[], today: string): PeriodChange {
  const nowFrom = addDays(today, 1 - PERIOD_DAYS);
  const [beforeFrom, beforeTo] = [addDays(nowFrom, -APART_DAYS), addDays(today, -APART_DAYS)];
  const reps = segments.at(-1)?.reps ?? [];
  const change = (number: typeof averageError): SpreadChange => {
    const practices = practicesOf(reps, { feedback: 'hidden', number });
    return spreadChange(
      valuesBetween(practices, beforeFrom, beforeTo),
      valuesBetween(practices, nowFrom, today),
    );
  };
  const isBroken = segments.length > 1 && reps[0]!.day > beforeFrom;
  return {
    nowFrom,
    nowTo: today,
    beforeFrom,
    beforeTo,
    amount: change(averageError),
    timing: change(startError),
    brokenOn: isBroken ? reps[0]!.day : null,
  };
}

function valuesBetween(
  practices: readonly PracticeValues[],
  from: string,
  to: string,
): (readonly number[])[] {
  return practices.filter(({ day }) => day >= from && day <= to).map(({ values }) => values);
}

import { type SpreadChange, spreadChange } from '../change/spread-change.ts';
import { addDays } from '../iso-week.ts';
import { sharedOf } from '../rep-columns.ts';
import type { PracticeValues } from './practice-values.ts';
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
  const newest = segments.at(-1);
  const since = newest === undefined ? null : sharedOf(newest.reps, 0).day;
  const practices = newest?.practices ?? [];
  const before = practices.filter(({ day }) => day >= beforeFrom && day <= beforeTo);
  const now = practices.filter(({ day }) => day >= nowFrom && day <= today);
  const change = (number: Compared): SpreadChange =>
    spreadChange(hiddenValues(before, number), hiddenValues(now, number));
  const isBroken = segments.length > 1 && since !== null && since > beforeFrom;
  return {
    nowFrom,
    nowTo: today,
    beforeFrom,
    beforeTo,
    amount: change('averageErrorLevel'),
    timing: change('startOfReleaseErrorS'),
    brokenOn: isBroken ? since : null,
  };
}

type Compared = 'averageErrorLevel' | 'startOfReleaseErrorS';

function hiddenValues(
  practices: readonly PracticeValues[],
  number: Compared,
): (readonly number[])[] {
  return practices.map(({ hidden }) => hidden[number]);
}

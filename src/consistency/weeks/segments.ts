import { changedConditions } from '../changed-conditions.ts';
import type { Reps } from '../rep-columns.ts';
import type { Conditions } from '../rep-measure.ts';
import { type PracticeValues, practiceValues } from './practice-values.ts';

/** Reps between two breaks in comparability. */
export interface Segment {
  readonly reps: Reps;
  readonly practices: readonly PracticeValues[];
  /** What changed at its start; empty of the first. */
  readonly changed: readonly (keyof Conditions)[];
  readonly from: Conditions | null;
  readonly to: Conditions;
}

/**
 * Cuts reps where pedal, calibration, footwear, target or score version change. Nothing is averaged or compared
 * across a cut, not even when the old conditions return: what was learned meanwhile was learned on something else.
 *
 * @param reps of one series, oldest first
 */
export function segmentsOf({ columns, places }: Reps): Segment[] {
  const cuts: Cut[] = [];
  let seen: Conditions | null = null;
  const { shared, sharedAt } = columns;
  for (let i = 0; i < places.length; i++) {
    const { conditions } = shared[sharedAt[places[i]!]!]!;
    // neighbours nearly always share the very object, and it says nothing new then
    if (conditions === seen) continue;
    seen = conditions;
    const last = cuts.at(-1);
    const changed = last === undefined ? [] : changedConditions(last.to, conditions);
    if (last === undefined || changed.length > 0)
      cuts.push({ start: i, changed, from: last?.to ?? null, to: conditions });
    // void reps have no score version: that of the reps before holds on
    else if (last.to.scoreVersion === null) last.to = conditions;
  }
  return cuts.map(({ start, ...cut }, i) => {
    const end = cuts[i + 1]?.start ?? places.length;
    const reps = { columns, places: places.subarray(start, end) };
    return { ...cut, reps, practices: practiceValues(reps) };
  });
}

interface Cut {
  readonly start: number;
  readonly changed: Segment['changed'];
  readonly from: Conditions | null;
  to: Conditions;
}

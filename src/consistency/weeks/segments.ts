import { changedConditions } from '../changed-conditions.ts';
import type { Conditions, RepMeasure } from '../rep-measure.ts';

/** Reps between two breaks in comparability. */
export interface Segment {
  readonly reps: readonly RepMeasure[];
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
export function segmentsOf(reps: readonly RepMeasure[]): Segment[] {
  const segments: {
    reps: RepMeasure[];
    changed: Segment['changed'];
    from: Conditions | null;
    to: Conditions;
  }[] = [];
  for (const rep of reps) {
    const last = segments.at(-1);
    const changed = last === undefined ? [] : changedConditions(last.to, rep.conditions);
    if (last === undefined || changed.length > 0)
      segments.push({ reps: [rep], changed, from: last?.to ?? null, to: rep.conditions });
    else {
      last.reps.push(rep);
      // void reps have no score version: that of the reps before holds on
      if (last.to.scoreVersion === null) last.to = rep.conditions;
    }
  }
  return segments;
}

import { groupsOf } from '../groups-of.ts';
import { type Reps, type SharedMeasure, sharedOf } from '../rep-columns.ts';

/** Reps that belong to one line in a picture: one driver, target, source, foot and condition of the track. */
export interface Series {
  readonly driver: string;
  readonly targetId: string;
  readonly source: string;
  readonly foot: string;
  readonly condition: string | null;
  /** Oldest first. */
  readonly reps: Reps;
}

/**
 * Sorts reps into series. The two feet, dry and wet, and a simulated driver among the real ones are never taken
 * together, however often they take turns.
 *
 * @param reps oldest first
 * @returns in the order of their first rep
 */
export function seriesOf(reps: Reps): Series[] {
  const all = groupsOf(reps, isSame, ({ driver, targetId, conditions }) => {
    const { source, foot, condition } = conditions;
    return JSON.stringify([driver, targetId, source, foot, condition]);
  });
  return all.map((own) => {
    const { driver, targetId, conditions } = sharedOf(own, 0);
    const { source, foot, condition } = conditions;
    return { driver, targetId, source, foot, condition, reps: own };
  });
}

function isSame(one: SharedMeasure, other: SharedMeasure): boolean {
  const [a, b] = [one.conditions, other.conditions];
  return (
    one.driver === other.driver &&
    one.targetId === other.targetId &&
    (a === b || (a.source === b.source && a.foot === b.foot && a.condition === b.condition))
  );
}

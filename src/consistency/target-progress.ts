import { groupsOf } from './groups-of.ts';
import type { PracticeDay } from './practice-day.ts';
import { practiceDays } from './practice-days.ts';
import { type Reps, sharedOf } from './rep-columns.ts';

/** All practice of one driver on one target. */
export interface TargetProgress {
  readonly driver: string;
  readonly targetId: string;
  /** In time order; one row per day, more where the conditions changed within a day. */
  readonly days: readonly PracticeDay[];
}

/**
 * Sorts reps by driver and target and sums them up day by day. No row mixes reps that do not compare.
 *
 * @param reps oldest first
 * @returns by driver, then target, both in the order of their first rep
 */
export function targetProgress(reps: Reps): TargetProgress[] {
  const groups = groupsOf(
    reps,
    (one, other) => one.driver === other.driver && one.targetId === other.targetId,
    ({ driver, targetId }) => JSON.stringify([driver, targetId]),
  );
  return groups.map((group) => {
    const { driver, targetId } = sharedOf(group, 0);
    return { driver, targetId, days: practiceDays(group) };
  });
}

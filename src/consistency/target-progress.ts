import { changedConditions } from './changed-conditions.ts';
import { groupsOf } from './groups-of.ts';
import { type PracticeDay, practiceDay } from './practice-day.ts';
import type { Conditions, RepMeasure } from './rep-measure.ts';

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
export function targetProgress(reps: readonly RepMeasure[]): TargetProgress[] {
  const groups = groupsOf(
    reps,
    (one, other) => one.driver === other.driver && one.targetId === other.targetId,
    ({ driver, targetId }) => JSON.stringify([driver, targetId]),
  );
  return groups.map((group) => ({
    driver: group[0]!.driver,
    targetId: group[0]!.targetId,
    days: practiceDays(group),
  }));
}

interface Run {
  readonly reps: RepMeasure[];
  readonly changed: readonly (keyof Conditions)[];
  /** Of the newest rep, its score version filled in from the reps before where it has none. */
  conditions: Conditions;
}

function practiceDays(reps: readonly RepMeasure[]): PracticeDay[] {
  const runs: Run[] = [];
  for (const rep of reps) {
    const run = runs.at(-1);
    const before = run?.conditions ?? rep.conditions;
    const changed = changedConditions(before, rep.conditions);
    const conditions =
      rep.conditions.scoreVersion === null
        ? { ...rep.conditions, scoreVersion: before.scoreVersion }
        : rep.conditions;
    if (run !== undefined && changed.length === 0 && run.reps[0]!.day === rep.day) {
      run.reps.push(rep);
      run.conditions = conditions;
    } else runs.push({ reps: [rep], changed, conditions });
  }
  return runs.map((run) => practiceDay(run.reps, run.changed));
}

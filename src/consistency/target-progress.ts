import { changedConditions } from './changed-conditions.ts';
import { groupsOf } from './groups-of.ts';
import { type PracticeDay, practiceDay } from './practice-day.ts';
import { type Reps, sharedOf } from './rep-columns.ts';
import type { Conditions } from './rep-measure.ts';

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

interface Run {
  readonly start: number;
  readonly day: string;
  readonly changed: readonly (keyof Conditions)[];
  /** Of the newest rep, its score version filled in from the reps before where it has none. */
  conditions: Conditions;
}

function practiceDays(reps: Reps): PracticeDay[] {
  const { columns, places } = reps;
  const runs: Run[] = [];
  let last = -1;
  for (let i = 0; i < places.length; i++) {
    const at = columns.sharedAt[places[i]!]!;
    if (at === last) continue;
    last = at;
    const { day, conditions } = columns.shared[at]!;
    const run = runs.at(-1);
    const before = run?.conditions ?? conditions;
    const changed = changedConditions(before, conditions);
    const known = withScoreVersion(conditions, before);
    if (run !== undefined && changed.length === 0 && run.day === day) run.conditions = known;
    else runs.push({ start: i, day, changed, conditions: known });
  }
  return runs.map(({ start, changed }, i) => {
    const own = places.subarray(start, runs[i + 1]?.start);
    return practiceDay({ columns, places: own }, changed);
  });
}

/** Void reps have none: that of the reps before holds on. */
function withScoreVersion(conditions: Conditions, before: Conditions): Conditions {
  if (conditions.scoreVersion !== null || before.scoreVersion === null) return conditions;
  return { ...conditions, scoreVersion: before.scoreVersion };
}

import { changedConditions } from './changed-conditions.ts';
import { type PracticeDay, practiceDay } from './practice-day.ts';
import type { Reps } from './rep-columns.ts';
import type { Conditions } from './rep-measure.ts';

interface Run {
  readonly start: number;
  readonly day: string;
  readonly changed: readonly (keyof Conditions)[];
  /** Of the newest rep, its score version filled in from the reps before where it has none. */
  conditions: Conditions;
}

/**
 * One row per day, more where the conditions changed within a day.
 *
 * @param reps of one driver and target, oldest first
 */
export function practiceDays(reps: Reps): PracticeDay[] {
  const { columns, places } = reps;
  const { shared, sharedAt } = columns;
  const runs: Run[] = [];
  let last = -1;
  for (let i = 0; i < places.length; i++) {
    const at = sharedAt[places[i]!]!;
    if (at === last) continue;
    last = at;
    const { day, conditions } = shared[at]!;
    const run = runs.at(-1);
    if (run !== undefined && run.day === day && run.conditions === conditions) continue;
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

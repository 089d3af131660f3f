import { allReps, repsWhere } from '../consistency/rep-columns.ts';
import type { HistoryStore, RepQuery } from '../history/store.ts';
import { BAND_REPS } from '../score/advice-bands.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import type { Target } from '../target/target.ts';

/** What the history knows of a driver and a target before a drill begins. */
export interface Experience {
  readonly repsInLife: number;
  /** Outcomes of the newest of them, newest last. */
  readonly recent: readonly RepOutcome[];
  readonly hoursSinceLastRep: number | null;
}

const MS_PER_HOUR = 3_600_000;

/** Reps of just this version of the target: a changed target is a new one. */
export function experienceOf(
  store: HistoryStore,
  driver: string,
  target: Target,
  nowUtcMs: number,
): Experience {
  const query = { driver, targetId: target.id, targetVersion: target.version };
  const all = allReps(store.columns(query));
  const count = all.places.length;
  const driven = repsWhere(all, ({ voided }) => voided === null).places;
  const last = store.lastRepUtcMs(driver);
  return {
    repsInLife: driven.length,
    recent: newestOutcomes(store, query, count - (driven.at(-BAND_REPS) ?? driven[0] ?? count)),
    hoursSinceLastRep: last === null ? null : Math.max(0, nowUtcMs - last) / MS_PER_HOUR,
  };
}

/** Of the newest reps, void ones among them. Only these are read whole: a long history costs no more than a short one. */
function newestOutcomes(store: HistoryStore, query: RepQuery, limit: number): RepOutcome[] {
  const reps = [...store.reps({ ...query, limit })];
  return reps.flatMap(({ voided, outcomes }) => (voided === null ? outcomes.slice(-1) : []));
}

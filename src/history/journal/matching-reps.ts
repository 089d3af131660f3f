import type { RepQuery, StoredRep } from '../store.ts';

/** The reps a query asks for, oldest first: what the SQL of the database does, over a list. */
export function matchingReps(reps: readonly StoredRep[], query: RepQuery): StoredRep[] {
  const found = reps
    .filter((rep) => matches(rep, query))
    .sort((a, b) => a.at.utcMs - b.at.utcMs || a.id - b.id);
  return query.limit === undefined ? found : found.slice(Math.max(0, found.length - query.limit));
}

function matches(rep: StoredRep, query: RepQuery): boolean {
  const wanted = [
    [query.driver, rep.practice.driver],
    [query.targetId, rep.targetId],
    [query.targetVersion, rep.targetVersion],
    [query.corner, rep.corner],
    [query.practiceId, rep.practice.id],
  ];
  return (
    wanted.every(([asked, is]) => asked === undefined || asked === is) &&
    rep.at.utcMs >= (query.sinceUtcMs ?? Number.NEGATIVE_INFINITY)
  );
}

import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { repNumbers } from '../rep-numbers.ts';
import { sharedMaker } from '../shared-maker.ts';
import type { StoredRep } from '../store.ts';

/** What the statistics see of reps: the numbers of the newest score of each, null where it has none. */
export function repMeasures(reps: Iterable<StoredRep>): RepMeasure[] {
  const make = sharedMaker();
  return Array.from(reps, (rep) => {
    const newest = rep.outcomes.at(-1);
    return {
      ...make(rep.practice, { ...rep, scoreVersion: newest?.version ?? null }),
      repId: rep.id,
      numbers: newest === undefined ? null : repNumbers(newest),
    };
  });
}

import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { sinceBreak } from '../../consistency/weeks/since-break.ts';

/** The best reps that compare with the newest one, and out of how many. */
interface BestReps {
  /** Best first. */
  readonly reps: readonly RepMeasure[];
  readonly of: number;
}

/**
 * The reps with the highest scores among those of the newest rep's driver, target, source, foot and condition since
 * the last break. Void reps, reps without a score and warm-up reps are not among them. Of equal scores the newer goes
 * first.
 *
 * @param measures oldest first
 */
export function bestReps(measures: readonly RepMeasure[], most: number): BestReps {
  const scored = sinceBreak(measures).filter(
    ({ voided, warmUp, numbers }) => voided === null && !warmUp && numbers !== null,
  );
  const best = scored.toReversed().toSorted((a, b) => b.numbers!.score - a.numbers!.score);
  return { reps: best.slice(0, most), of: scored.length };
}

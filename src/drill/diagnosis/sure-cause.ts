import type { Interval } from '../../consistency/interval.ts';
import { medianInterval } from '../../consistency/summary/median-interval.ts';
import { shareInterval } from '../../consistency/summary/share-interval.ts';
import { dominantCause } from '../../score/dominant-cause.ts';
import type { Cause, RepOutcome } from '../../score/rep-score.ts';

/** The cause that most reps of a block share, and how sure it is. */
export interface SureCause {
  /** Medians of the reps that share it. */
  readonly cause: Cause;
  readonly reps: number;
  /** Reps that were scored, those without a cause included. */
  readonly of: number;
  /** Where the share of such reps lies that this driver would drive on and on (Clopper and Pearson). */
  readonly share: Interval;
  /**
   * Where the middle of its size lies (exact interval of a median): seconds for timing, the ratio for rate and amount.
   * Null for a shape, which has no size.
   */
  readonly size: Interval | null;
  /** `clear` where the whole interval of the share lies above one half: no other cause can be as common. */
  readonly verdict: 'clear' | 'likely';
}

/** @returns null unless at least three reps share a kind and a direction */
export function sureCause(outcomes: readonly RepOutcome[]): SureCause | null {
  const shared = dominantCause(outcomes);
  if (shared === null) return null;
  const of = outcomes.filter(({ kind }) => kind === 'scored').length;
  const share = shareInterval(shared.reps, of);
  const sizes = shared.causes.map(sizeOf).filter((size) => size !== null);
  return {
    cause: shared.cause,
    reps: shared.reps,
    of,
    share,
    size: medianInterval(sizes),
    verdict: share.low > 0.5 ? 'clear' : 'likely',
  };
}

function sizeOf({ kind, timingS, rateRatio, amountRatio }: Cause): number | null {
  if (kind === 'timing') return timingS;
  if (kind === 'rate') return rateRatio;
  return kind === 'amount' ? amountRatio : null;
}

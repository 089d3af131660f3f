import { quantile } from './quantile.ts';
import type { Cause, RepOutcome } from './rep-score.ts';

/** Single reps are named wrongly too often: noise alone moves the fit by 15 to 29 ms. */
const LEAST_REPS = 3;

/** What went wrong in a block, and in how many of its reps. */
export interface BlockCause {
  readonly cause: Cause;
  readonly reps: number;
  /** What each of those reps had. */
  readonly causes: readonly Cause[];
}

/**
 * The cause that most reps of a block share in kind and direction, with the medians of those reps. Early in one rep
 * and late in the next is no cause but spread.
 *
 * @returns null unless at least three reps share one.
 */
export function dominantCause(outcomes: readonly RepOutcome[]): BlockCause | null {
  const groups = new Map<string, Cause[]>();
  for (const outcome of outcomes) {
    if (outcome.kind !== 'scored' || outcome.cause === null) continue;
    const { cause } = outcome;
    const group = `${cause.kind} ${direction(cause)}`;
    groups.set(group, [...(groups.get(group) ?? []), cause]);
  }
  const largest = [...groups.values()].reduce<Cause[]>(
    (best, group) => (group.length > best.length ? group : best),
    [],
  );
  if (largest.length < LEAST_REPS) return null;
  return { cause: middle(largest), reps: largest.length, causes: largest };
}

function direction({ kind, timingS, rateRatio, amountRatio }: Cause): number {
  if (kind === 'timing') return Math.sign(timingS);
  if (kind === 'rate') return Math.sign(rateRatio - 1);
  if (kind === 'amount') return Math.sign(amountRatio - 1);
  return 0;
}

function middle(causes: readonly Cause[]): Cause {
  const of = (part: (cause: Cause) => number): number => quantile(causes.map(part), 0.5) ?? 0;
  return {
    kind: causes[0]!.kind,
    timingS: of(({ timingS }) => timingS),
    rateRatio: of(({ rateRatio }) => rateRatio),
    amountRatio: of(({ amountRatio }) => amountRatio),
    explained: of(({ explained }) => explained),
  };
}

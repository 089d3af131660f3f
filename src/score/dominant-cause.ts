import { quantile } from './quantile.ts';
import type { Cause, RepOutcome } from './rep-score.ts';
import { sharedGroup } from './shared-group.ts';

/** What went wrong in a block, and in how many of its reps. */
export interface BlockCause {
  readonly cause: Cause;
  readonly reps: number;
  /** What each of those reps had. */
  readonly causes: readonly Cause[];
}

/**
 * The cause that most reps of a block share in kind and direction, with the medians of those reps.
 *
 * @returns null unless at least three reps share one.
 */
export function dominantCause(outcomes: readonly RepOutcome[]): BlockCause | null {
  const causes = outcomes.flatMap((outcome) =>
    outcome.kind === 'scored' ? (outcome.cause ?? []) : [],
  );
  const shared = sharedGroup(causes, (cause) => `${cause.kind} ${direction(cause)}`);
  return shared && { cause: middle(shared), reps: shared.length, causes: shared };
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

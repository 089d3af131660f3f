import { describeCause } from '../score/describe-cause.ts';
import type { Cause } from '../score/rep-score.ts';
import type { SharedTrouble } from '../score/trouble/shared-troubles.ts';

/** What reps shared, with how many: `braked 5 m late, 7 of 10 reps`. */
function troubleText({ words, reps, of }: SharedTrouble): string {
  return `${words}, ${reps} of ${of} reps`;
}

/**
 * What the reps of a block shared, beside its cause.
 * @param cause that is told anyway
 */
export function troubleTexts(
  troubles: readonly SharedTrouble[],
  cause: Cause | null,
): readonly string[] {
  const told = cause === null ? '' : describeCause(cause);
  return troubles.filter(({ words }) => words !== told).map(troubleText);
}

/** The same in one line; empty for nothing. */
export function troubleSentence(troubles: readonly SharedTrouble[], cause: Cause | null): string {
  return troubleTexts(troubles, cause).join('; ');
}

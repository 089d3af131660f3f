import { NARROWEST_BANDS } from '../score/advice-bands.ts';
import { causeFault } from '../score/describe-cause.ts';
import type { RepOutcome, RepScore } from '../score/rep-score.ts';
import type { SharedTrouble } from '../score/trouble/shared-troubles.ts';

/**
 * One sentence on what to change in the next block; it says what to do, not what was wrong.
 *
 * @param outcomes of the block
 * @param troubles what those share
 */
export function blockAdvice(
  outcomes: readonly RepOutcome[],
  troubles: readonly SharedTrouble[],
): string {
  if (troubles.length > 0) return `Next block: ${troubles.map(({ change }) => change).join('; ')}.`;
  const scored = outcomes.filter((outcome) => outcome.kind === 'scored');
  if (scored.length < 3) return 'Three scored reps or more are needed to name a cause.';
  return 2 * scored.filter(isRight).length > scored.length
    ? 'Nothing to correct: do the same again.'
    : 'No cause shared by three reps: aim for the same release every time.';
}

/** Its release had nothing that can be felt. */
function isRight({ cause }: RepScore): boolean {
  return cause === null || causeFault(cause, NARROWEST_BANDS) === null;
}

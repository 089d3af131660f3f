import { changeFor } from '../../drill/block-advice.ts';
import { describeCause } from '../../score/describe-cause.ts';
import { dominantCause } from '../../score/dominant-cause.ts';
import type { RepOutcome } from '../../score/rep-score.ts';

/**
 * What to try first: what the newest reps have in common, then what the coach says.
 *
 * @param outcomes of the newest comparable reps
 * @param words advice of the sheet and note of the variant; null where there is none
 */
export function tryFirst(
  outcomes: readonly RepOutcome[],
  words: readonly (string | null)[],
): readonly string[] {
  const shared = dominantCause(outcomes);
  const said = words.filter((word): word is string => word !== null && word !== '');
  if (shared === null || describeCause(shared.cause) === '') return said;
  const scored = outcomes.filter((outcome) => outcome.kind === 'scored');
  const reps = `${shared.reps} of the last ${outcomes.length} reps`;
  return [
    `${changeFor(shared.cause, scored)} (${describeCause(shared.cause)} in ${reps})`,
    ...said,
  ];
}

import { changeFor } from '../../drill/change-for.ts';
import { speedChange, speedSentence } from '../../drill/speed-advice.ts';
import { describeCause } from '../../score/describe-cause.ts';
import { dominantCause } from '../../score/dominant-cause.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import { sharedSpeed } from '../../score/slowest-speed.ts';
import type { TextUnits } from '../../unit-text.ts';

/**
 * What to try first: what the newest reps have in common, then what the coach says.
 *
 * @param outcomes of the newest comparable reps
 * @param words advice of the sheet and note of the variant; null where there is none
 */
export function tryFirst(
  outcomes: readonly RepOutcome[],
  words: readonly (string | null)[],
  units: TextUnits = 'metric',
): readonly string[] {
  const shared = change(outcomes, units);
  return [
    ...(shared === null ? [] : [shared]),
    ...words.filter((word): word is string => word !== null && word !== ''),
  ];
}

/** A corner that is entered far too fast or too slow comes before what the release has. */
function change(outcomes: readonly RepOutcome[], units: TextUnits): string | null {
  const scored = outcomes.filter((outcome) => outcome.kind === 'scored');
  const shared = dominantCause(outcomes);
  const speed = sharedSpeed(outcomes);
  if (speed !== null)
    return `${speedChange(speed, shared?.cause ?? null, scored, units)} (${speedSentence(speed, units)})`;
  if (shared === null || describeCause(shared.cause) === '') return null;
  const reps = `${shared.reps} of the last ${outcomes.length} reps`;
  return `${changeFor(shared.cause, scored)} (${describeCause(shared.cause)} in ${reps})`;
}

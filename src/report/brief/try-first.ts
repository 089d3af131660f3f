import type { RepOutcome } from '../../score/rep-score.ts';
import { sharedTroubles } from '../../score/trouble/shared-troubles.ts';
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

/** In the order in which a block tells it. */
function change(outcomes: readonly RepOutcome[], units: TextUnits): string | null {
  const troubles = sharedTroubles(outcomes, units);
  if (troubles.length === 0) return null;
  const changes = troubles.map((trouble) => trouble.change).join('; ');
  const shared = troubles.map(({ words, reps }) => `${words} in ${reps}`).join(', ');
  return `${changes} (${shared} of the last ${outcomes.length} reps)`;
}

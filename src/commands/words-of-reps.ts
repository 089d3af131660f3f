import type { StoredRep } from '../history/store.ts';
import { adviceBands, BAND_REPS } from '../score/advice-bands.ts';
import { describeOutcome } from '../score/describe-outcome.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import type { TextUnits } from '../unit-text.ts';

/** What to tell the driver about each rep, with bands from the reps of the practice before it; by the id of the rep. */
export function wordsOfReps(reps: readonly StoredRep[], units: TextUnits): Map<number, string> {
  const before: RepOutcome[] = [];
  const words = new Map<number, string>();
  for (const { id, voided, outcomes } of reps) {
    const outcome = voided === null ? outcomes.at(-1) : undefined;
    if (outcome === undefined) continue;
    words.set(id, describeOutcome(outcome, adviceBands(before.slice(-BAND_REPS)), units));
    before.push(outcome);
  }
  return words;
}

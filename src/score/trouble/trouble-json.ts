import type { SharedTrouble } from './shared-troubles.ts';

/** What reps share as plain data. */
export function troubleJson({ part, words, change, reps, of }: SharedTrouble): object {
  return { part, words, change, reps_count: reps, of_count: of };
}

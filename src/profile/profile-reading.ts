import { type ProfileProblem, problemOfFile } from './profile-problem.ts';

/** What came of reading a profile: a sound value, or the problems, and never both. */
export type ProfileReading<T> =
  | { readonly kind: 'read'; readonly value: T }
  | { readonly kind: 'refused'; readonly problems: readonly ProfileProblem[] };

/**
 * The value that was read.
 *
 * @param fileName as messages name it
 * @throws Problem (exit code 1) that lists every problem of the file with line and column
 */
export function soundValue<T>(reading: ProfileReading<T>, fileName: string): T {
  if (reading.kind === 'refused') throw problemOfFile(fileName, reading.problems);
  return reading.value;
}

import { Problem } from '../../problem.ts';

interface Remedy {
  readonly what: string;
  readonly next: string;
}

const LOCKED: Remedy = {
  what: 'another program holds the history and does not let go',
  next: 'Close the other program, or wait for it, and try again; nothing was written.',
};
const READ_ONLY: Remedy = {
  what: 'the history cannot be written here',
  next: 'Give yourself the right to write to the file and its folder, or choose another with --data-dir.',
};
const DAMAGED: Remedy = {
  what: 'the history is damaged or not a history at all',
  next: 'It was left as it is. Move it away (a copy may still be repaired) and put a backup in its place.',
};

/** By the primary result codes of SQLite, https://www.sqlite.org/rescode.html. */
const REMEDIES: Readonly<Record<number, Remedy>> = {
  1: DAMAGED, // "no such table", where the schema itself was hit
  3: READ_ONLY,
  5: LOCKED,
  6: LOCKED,
  8: READ_ONLY,
  10: {
    what: 'the disk failed while the history was read or written',
    next: 'Check the disk and its cable, then try again; finished reps are kept.',
  },
  11: DAMAGED,
  13: {
    what: 'the disk is full, the history could not be written',
    next: 'Make room on the disk and try again; what was finished before is kept.',
  },
  14: {
    what: 'the history cannot be opened',
    next: 'Check that its folder exists and is yours, or choose another with --data-dir.',
  },
  19: DAMAGED, // what we write keeps every constraint, so a row that should be there is not
  26: DAMAGED,
};

/** What a user can do about an error of SQLite; null where it is a defect of the program. */
export function sqlProblem(
  resultCode: number | null,
  file: string,
  error: unknown,
): Problem | null {
  const remedy = resultCode === null ? undefined : REMEDIES[resultCode];
  return remedy === undefined ? null : problem(remedy, file, error);
}

/** Makes values of rows; what a damaged row leads to (text that is no JSON, dates out of range) becomes a Problem. */
export function fromRows<T>(file: string, make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof RangeError)
      throw problem(DAMAGED, file, error);
    throw error;
  }
}

function problem({ what, next }: Remedy, where: string, error: unknown): Problem {
  return new Problem(`${what} (${String((error as Error).message)})`, { where, next });
}

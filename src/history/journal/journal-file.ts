import {
  closeSync,
  existsSync,
  fstatSync,
  fsyncSync,
  openSync,
  readSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { Problem } from '../../problem.ts';
import { withFileProblems } from '../file-problem.ts';
import { syncFolder } from '../sync-folder.ts';
import { type JournalEntry, journalLine, parseJournalLine } from './journal-line.ts';
import { type FileLine, readLines } from './read-lines.ts';

/** An entry with its place in the file. */
export interface PlacedEntry extends Pick<FileLine, 'offset' | 'length'> {
  readonly entry: JournalEntry;
  /** The open file it stands in. */
  readonly fd: number;
}

/**
 * Appends lines and syncs. The file is opened for every line: a program that has SQLite may import and rename it in
 * between. Lines are written with one call in append mode, so that two programs do not mix theirs.
 *
 * @returns false where the file was renamed meanwhile: the line may have come too late for the import and has to be
 *   appended again to the new file; the import takes each entry once.
 */
export function appendToJournal(path: string, entries: readonly JournalEntry[]): boolean {
  return withFileProblems(path, () => {
    const isNew = !existsSync(path);
    const fd = openSync(path, 'a+');
    try {
      const text = (endsInLine(fd) ? '' : '\n') + entries.map(journalLine).join('');
      const bytes = Buffer.from(text);
      if (writeSync(fd, bytes) < bytes.length) throw full(path);
      fsyncSync(fd);
      if (isNew) syncFolder(dirname(path));
      return sameFile(fd, path);
    } finally {
      closeSync(fd);
    }
  });
}

/** The entries from an offset on; unfinished lines are passed over. */
export function* readJournal(fd: number, path: string, from: number): Iterable<PlacedEntry> {
  for (const { text, offset, length } of readLines(fd, from)) {
    const entry = parseJournalLine(text, `${path}, byte ${offset}`);
    if (entry !== null) yield { entry, offset, length, fd };
  }
}

/** True while `path` still names the open file. */
export function sameFile(fd: number, path: string): boolean {
  const named = statSync(path, { bigint: true, throwIfNoEntry: false });
  return named !== undefined && named.ino === fstatSync(fd, { bigint: true }).ino;
}

/** A line cut short by the end of a program or of the power has no line feed; the next one must not continue it. */
function endsInLine(fd: number): boolean {
  const { size } = fstatSync(fd);
  const last = Buffer.alloc(1);
  return size === 0 || (readSync(fd, last, 0, 1, size - 1) === 1 && last[0] === 10);
}

function full(path: string): Problem {
  return new Problem('the disk is full', {
    where: path,
    next: 'Make room on the disk and try again; finished reps are kept.',
  });
}

import { closeSync, existsSync, openSync, renameSync } from 'node:fs';
import { withFileProblems } from '../file-problem.ts';
import type { SqlDatabase } from '../sql/sql-database.ts';
import { importEntry } from './import-entry.ts';
import { readJournal, sameFile } from './journal-file.ts';

/**
 * Moves a journal into the database, each entry exactly once whatever goes wrong in between: entries carry an identity
 * that the database knows, so that a second run adds nothing. The file is then kept as `*.imported`.
 *
 * Programs without SQLite may append at any moment, and trust a line once it stands in the file that has the journal's
 * name. So the file loses its name first, as `*.importing`, and is read to its end after that; whoever starts next
 * takes in what a program that ended in between left under that name.
 *
 * @throws Problem for a damaged journal; then nothing of it is imported and it stays where it is.
 */
export function importJournal(db: SqlDatabase, journal: string): void {
  if (existsSync(importing(journal))) db.transaction(() => finish(db, journal));
  // another program may put another file in its place meanwhile: then there is one more round
  for (let isAside = false; !isAside && existsSync(journal); ) {
    const fd = openedOrNull(journal);
    if (fd === null) return;
    try {
      const readTo = db.transaction(() => importFrom(db, fd, journal, 0));
      isAside = db.transaction(() => setAside(db, journal, { fd, readTo }));
    } finally {
      closeSync(fd);
    }
  }
}

/** A file whose entries were taken in up to an offset. */
interface ReadFile {
  readonly fd: number;
  readonly readTo: number;
}

/** Under the database's lock, so that one program of two does it. False for a file that was not read before. */
function setAside(db: SqlDatabase, journal: string, read: ReadFile): boolean {
  finish(db, journal);
  if (!existsSync(journal)) return true;
  if (!sameFile(read.fd, journal)) return false;
  withFileProblems(journal, () => renameSync(journal, importing(journal)));
  finish(db, journal, read);
  return true;
}

/** Takes in what is new in the file that has lost its name, under the database's lock. */
function finish(db: SqlDatabase, journal: string, read: ReadFile | null = null): void {
  const aside = importing(journal);
  const fd = openedOrNull(aside);
  if (fd === null) return;
  try {
    importFrom(db, fd, aside, read !== null && sameFile(read.fd, aside) ? read.readTo : 0);
  } finally {
    closeSync(fd);
  }
  withFileProblems(journal, () => renameSync(aside, unusedName(journal)));
}

/** @returns the end of the last finished line */
function importFrom(db: SqlDatabase, fd: number, path: string, from: number): number {
  let readTo = from;
  for (const { entry, offset, length } of readJournal(fd, path, from)) {
    importEntry(db, entry);
    readTo = offset + length;
  }
  return readTo;
}

/** Null where another program has taken it away. */
function openedOrNull(path: string): number | null {
  return withFileProblems(path, () => {
    try {
      return openSync(path, 'r');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
      throw error;
    }
  });
}

const importing = (journal: string): string => `${journal}.importing`;

function unusedName(journal: string): string {
  for (let i = 1; ; i++) {
    const name = i === 1 ? `${journal}.imported` : `${journal}.${i}.imported`;
    if (!existsSync(name)) return name;
  }
}

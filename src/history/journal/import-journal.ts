import { closeSync, existsSync, fstatSync, openSync, renameSync } from 'node:fs';
import { withFileProblems } from '../file-problem.ts';
import type { SqlDatabase } from '../sql/sql-database.ts';
import { importEntry } from './import-entry.ts';
import { readJournal, sameFile } from './journal-file.ts';

/**
 * Moves a journal into the database, each entry exactly once whatever goes wrong in between: entries carry an identity
 * that the database knows, so that a second run adds nothing. The file is then kept as `*.imported`.
 *
 * @throws Problem for a damaged journal; then nothing of it is imported and it stays where it is.
 */
export function importJournal(db: SqlDatabase, journal: string): void {
  // another program may append between the import and the renaming: then there is one more round
  while (existsSync(journal)) {
    const fd = withFileProblems(journal, () => openSync(journal, 'r'));
    try {
      const { size } = fstatSync(fd);
      db.transaction(() => {
        for (const { entry } of readJournal(fd, journal, 0)) importEntry(db, entry);
      });
      if (setAside(db, fd, journal, size)) return;
    } finally {
      closeSync(fd);
    }
  }
}

/** Under the database's lock, so that of two programs one renames, and only what was read to its end. */
function setAside(db: SqlDatabase, fd: number, journal: string, size: number): boolean {
  return db.transaction(() => {
    if (!sameFile(fd, journal) || fstatSync(fd).size !== size) return false;
    withFileProblems(journal, () => renameSync(journal, unusedName(journal)));
    return true;
  });
}

function unusedName(journal: string): string {
  for (let i = 1; ; i++) {
    const name = i === 1 ? `${journal}.imported` : `${journal}.${i}.imported`;
    if (!existsSync(name)) return name;
  }
}

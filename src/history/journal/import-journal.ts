import { closeSync, existsSync, fstatSync, openSync, renameSync } from 'node:fs';
import { withFileProblems } from '../file-problem.ts';
import { insertNote } from '../sql/note-row.ts';
import { hasOutcome, insertOutcome } from '../sql/outcome-row.ts';
import { insertPractice } from '../sql/practice-row.ts';
import { insertRep, insertSelfRating, isRated } from '../sql/rep-row.ts';
import type { SqlDatabase } from '../sql/sql-database.ts';
import { readJournal, sameFile } from './journal-file.ts';
import type { JournalEntry } from './journal-line.ts';

type Entry<Kind> = Extract<JournalEntry, { readonly kind: Kind }>;

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

function importEntry(db: SqlDatabase, entry: JournalEntry): void {
  if (entry.kind === 'outcome') importOutcome(db, entry);
  else if (entry.kind === 'rating') importRating(db, entry);
  else if (idOf(db, entry.kind, entry.origin) !== null) return;
  else if (entry.kind === 'practice') insertPractice(db, entry.start, entry.origin);
  else if (entry.kind === 'note') importNote(db, entry);
  else importRep(db, entry);
}

function importRep(db: SqlDatabase, entry: Entry<'rep'>): void {
  const practiceId = idOf(db, 'practice', entry.practice);
  if (practiceId === null) return;
  const repId = insertRep(db, practiceId, entry.rep, entry.origin);
  const samples = Buffer.from(entry.samples, 'base64');
  db.run('INSERT INTO samples (rep_id, bytes) VALUES (?, ?)', repId, samples);
  if (entry.rep.outcome !== null) insertOutcome(db, repId, entry.rep.outcome);
}

function importOutcome(db: SqlDatabase, { rep, outcome }: Entry<'outcome'>): void {
  const repId = idOf(db, 'rep', rep);
  if (repId !== null && !hasOutcome(db, repId, outcome.version)) insertOutcome(db, repId, outcome);
}

function importRating(db: SqlDatabase, { rep, selfRating }: Entry<'rating'>): void {
  const repId = idOf(db, 'rep', rep);
  if (repId !== null && !isRated(db, repId)) insertSelfRating(db, repId, selfRating);
}

function importNote(db: SqlDatabase, { origin, rep, note }: Entry<'note'>): void {
  const repId = rep === null ? null : idOf(db, 'rep', rep);
  insertNote(db, { ...note, repId }, origin);
}

function idOf(db: SqlDatabase, table: 'practice' | 'rep' | 'note', origin: string): number | null {
  return db.get<{ id: number }>(`SELECT id FROM ${table} WHERE origin = ?`, origin)?.id ?? null;
}

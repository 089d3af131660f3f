import { insertNote } from '../sql/note-row.ts';
import { hasOutcome, insertOutcome } from '../sql/outcome-row.ts';
import { insertPractice } from '../sql/practice-row.ts';
import { insertRep, insertSelfRating, isRated } from '../sql/rep-row.ts';
import type { SqlDatabase } from '../sql/sql-database.ts';
import type { JournalEntry } from './journal-line.ts';

type Entry<Kind> = Extract<JournalEntry, { readonly kind: Kind }>;

/** Adds what an entry says to a database that does not know it yet; one that is known changes nothing. */
export function importEntry(db: SqlDatabase, entry: JournalEntry): void {
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

import type { NewNote, NoteQuery, StoredNote } from '../store.ts';
import type { SqlDatabase } from './sql-database.ts';
import type { SqlValue } from './sql-driver.ts';

export interface NoteRow {
  readonly id: number;
  readonly utc_ms: number;
  readonly zone: string;
  readonly offset_min: number;
  readonly driver: string;
  readonly text: string;
  readonly car: string | null;
  readonly corner: string | null;
  readonly variant: string | null;
  readonly gear: number | null;
  readonly rep_id: number | null;
}

export function insertNote(db: SqlDatabase, note: NewNote, origin: string): number {
  return db.run(
    `INSERT INTO note (origin, utc_ms, zone, offset_min, driver, text, car, corner, variant, gear, rep_id)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    origin,
    note.at.utcMs,
    note.at.zone,
    note.at.offsetMin,
    note.driver,
    note.text,
    note.car,
    note.corner,
    note.variant,
    note.gear,
    note.repId,
  );
}

/** Oldest first. */
export function notesOf(db: SqlDatabase, { driver, corner, repId }: NoteQuery): StoredNote[] {
  const conditions: [string, SqlValue | undefined][] = [
    ['driver = ?', driver],
    ['corner = ?', corner],
    ['rep_id = ?', repId],
  ];
  const given = conditions.flatMap(([sql, value]) => (value === undefined ? [] : { sql, value }));
  const where = given.length === 0 ? '' : `WHERE ${given.map(({ sql }) => sql).join(' AND ')}`;
  const values = given.map(({ value }) => value);
  return db.all<NoteRow>(`SELECT * FROM note ${where} ORDER BY utc_ms, id`, ...values).map(noteOf);
}

export function noteOf(row: NoteRow): StoredNote {
  return {
    id: row.id,
    at: { utcMs: row.utc_ms, zone: row.zone, offsetMin: row.offset_min },
    driver: row.driver,
    text: row.text,
    car: row.car,
    corner: row.corner,
    variant: row.variant,
    gear: row.gear,
    repId: row.rep_id,
  };
}

import type { RepQuery, StoredPractice } from '../store.ts';
import { encodePack, type MeasurePack, packReader } from './measure-pack.ts';
import { measureRows } from './measure-row.ts';
import { PRACTICE_COLUMNS, type PracticeRow, practiceOf } from './practice-row.ts';
import type { SqlDatabase } from './sql-database.ts';

export interface PracticePack {
  readonly practice: StoredPractice;
  readonly pack: MeasurePack;
}

/** Short enough that a drill which wants to keep a rep meanwhile does not notice. */
const PRACTICES_AT_ONCE = 50;

/**
 * The practices of a query, oldest first, each with its reps packed. The truth is in the rows: triggers of the
 * database drop a pack in the transaction that writes a rep, a rating or an outcome of its practice, and the next one
 * who asks makes it again.
 */
export function practicePacks(db: SqlDatabase, query: RepQuery): PracticePack[] {
  const read = packReader();
  const packs = new Map<number, MeasurePack | null>();
  const practices = db.map<PracticeRow & { bytes: Uint8Array | null }, StoredPractice>(
    `SELECT ${PRACTICE_COLUMNS}, bytes FROM practice LEFT JOIN measure_pack ON practice_id = practice.id
      WHERE driver = coalesce(?, driver) AND practice.id = coalesce(?, practice.id)
      ORDER BY practice.utc_ms, practice.id`,
    [query.driver ?? null, query.practiceId ?? null],
    (row) => {
      packs.set(row.p_id, row.bytes === null ? null : read(row.bytes));
      return practiceOf(row);
    },
  );
  const missing = practices.flatMap(({ id }) => (packs.get(id) === null ? [id] : []));
  for (const [id, bytes] of packed(db, missing)) packs.set(id, read(bytes));
  return practices.map((practice) => ({ practice, pack: packs.get(practice.id)! }));
}

/** Makes packs and keeps them. Where the file cannot be written they are made all the same. */
function packed(db: SqlDatabase, practiceIds: readonly number[]): Map<number, Uint8Array> {
  const all = new Map<number, Uint8Array>();
  let canWrite = true;
  for (let i = 0; i < practiceIds.length; i += PRACTICES_AT_ONCE) {
    const make = (keep: boolean): void => {
      for (const id of practiceIds.slice(i, i + PRACTICES_AT_ONCE)) {
        const bytes = encodePack(measureRows(db, id));
        all.set(id, bytes);
        if (keep)
          db.run(
            'INSERT OR REPLACE INTO measure_pack (practice_id, bytes) VALUES (?, ?)',
            id,
            bytes,
          );
      }
    };
    canWrite &&= isDone(() => db.transaction(() => make(true)));
    if (!canWrite) make(false);
  }
  return all;
}

/** False where it failed; who reads the rows after it meets what is wrong with them. */
function isDone(work: () => void): boolean {
  try {
    work();
    return true;
  } catch {
    return false;
  }
}

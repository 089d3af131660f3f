import type { RepQuery, StoredPractice } from '../store.ts';
import { encodePack, type MeasurePack, packReader } from './measure-pack.ts';
import { measureRows } from './measure-row.ts';
import { PRACTICE_COLUMNS, type PracticeRow, practiceOf } from './practice-row.ts';
import type { SqlDatabase } from './sql-database.ts';

export interface PracticePack {
  readonly practice: StoredPractice;
  readonly pack: MeasurePack;
}

interface PackRow {
  readonly practice_id: number;
  readonly bytes: Uint8Array;
}

const ASKED = 'driver = coalesce(?, driver) AND id = coalesce(?, id)';

/** Short enough that a drill which wants to keep a rep meanwhile does not notice. */
const PRACTICES_AT_ONCE = 50;

/**
 * The practices of a query, oldest first, each with its reps packed. The truth is in the rows: triggers of the
 * database drop a pack in the transaction that writes a rep, a rating or an outcome of its practice, and the next one
 * who asks makes it again.
 */
export function practicePacks(db: SqlDatabase, query: RepQuery): PracticePack[] {
  const asked = [query.driver ?? null, query.practiceId ?? null];
  const practices = db.map<PracticeRow, StoredPractice>(
    `SELECT ${PRACTICE_COLUMNS} FROM practice WHERE ${ASKED} ORDER BY utc_ms, id`,
    asked,
    practiceOf,
  );
  const read = packReader();
  const packs = new Map<number, MeasurePack | null>();
  // apart from the practices: to put them in order, the database would copy every pack
  db.map<PackRow, unknown>(
    `SELECT practice_id, bytes FROM measure_pack WHERE practice_id IN (SELECT id FROM practice WHERE ${ASKED})`,
    asked,
    ({ practice_id, bytes }) => packs.set(practice_id, read(bytes)),
  );
  const missing = practices.flatMap(({ id }) => ((packs.get(id) ?? null) === null ? [id] : []));
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

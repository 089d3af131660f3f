import { decodeRecord } from '../codec/decode-record.ts';
import type {
  HistorySnapshot,
  KeptCounts,
  KeptNote,
  KeptPractice,
  KeptQuery,
  KeptRep,
  RepFields,
} from '../kept.ts';
import type { StoredRep } from '../store.ts';
import { type NoteRow, noteOf } from './note-row.ts';
import { outcomesOf } from './outcome-row.ts';
import { PRACTICE_COLUMNS, type PracticeRow, practiceOf } from './practice-row.ts';
import { REP_SELECT, type RepRow, repOf } from './rep-row.ts';
import type { SqlDatabase } from './sql-database.ts';
import type { SqlValue } from './sql-driver.ts';
import { fromRows } from './sql-problem.ts';

/** Rows are asked for by the hundred: no more is held, and the connection is free in between. */
const AT_ONCE = 200;

type Table = 'practice' | 'rep' | 'note';

/** What a query takes from each table, with the driver and the earliest instant where they are asked for. */
const PARTS: Readonly<Record<Table, { from: string; driver: string; since: string }>> = {
  practice: {
    from: 'FROM practice',
    driver: 'practice.driver = ?',
    since: 'EXISTS (SELECT 1 FROM rep WHERE rep.practice_id = practice.id AND rep.utc_ms >= ?)',
  },
  rep: {
    from: 'FROM rep JOIN practice ON practice.id = rep.practice_id',
    driver: 'practice.driver = ?',
    since: 'rep.utc_ms >= ?',
  },
  note: {
    from: 'FROM note LEFT JOIN rep ON rep.id = note.rep_id LEFT JOIN practice ON practice.id = rep.practice_id',
    driver: 'coalesce(practice.driver, note.driver) = ?',
    since: 'coalesce(rep.utc_ms, note.utc_ms) >= ?',
  },
};

interface Place {
  readonly origin: string;
  readonly utc_ms: number;
}

/** A read transaction: in a write-ahead log it holds up nobody who writes. */
export class SqlSnapshot implements HistorySnapshot {
  readonly #db: SqlDatabase;
  #open = true;

  constructor(db: SqlDatabase) {
    this.#db = db;
    db.exec('BEGIN');
  }

  counts(query: KeptQuery): KeptCounts {
    const count = (table: Table): number => {
      const { sql, values } = partOf(table, query, []);
      return this.#db.get<{ n: number }>(`SELECT count(*) AS n ${sql}`, ...values)?.n ?? 0;
    };
    return { practices: count('practice'), reps: count('rep'), notes: count('note') };
  }

  *practices(query: KeptQuery): Iterable<KeptPractice> {
    for (const origin of this.#origins('practice', query)) yield this.practice(origin)!;
  }

  *reps(query: KeptQuery): Iterable<KeptRep> {
    for (const origin of this.#origins('rep', query)) yield this.rep(origin)!;
  }

  *notes(query: KeptQuery): Iterable<KeptNote> {
    for (const origin of this.#origins('note', query)) yield this.note(origin)!;
  }

  practice(origin: string): KeptPractice | null {
    const row = this.#db.get<PracticeRow>(
      `SELECT ${PRACTICE_COLUMNS} FROM practice WHERE origin = ?`,
      origin,
    );
    if (row === null) return null;
    const { id: _, ...start } = practiceOf(row);
    return { origin, start };
  }

  rep(origin: string): KeptRep | null {
    const row = this.#db.get<RepRow>(`${REP_SELECT} WHERE rep.origin = ?`, origin);
    if (row === null) return null;
    const { id } = row;
    const rep = fromRows(this.#db.file, () => repOf(row, outcomesOf(this.#db, id)));
    const practice = this.#originOf('practice', rep.practice.id)!;
    return {
      origin,
      practice,
      fields: fieldsOf(rep),
      outcomes: rep.outcomes,
      record: () => {
        const samples = this.#db.get<{ bytes: Uint8Array }>(
          'SELECT bytes FROM samples WHERE rep_id = ?',
          id,
        );
        const bytes = samples?.bytes ?? new Uint8Array(0);
        return decodeRecord(bytes, `${this.#db.file}, rep ${id}`);
      },
    };
  }

  note(origin: string): KeptNote | null {
    const row = this.#db.get<NoteRow>('SELECT * FROM note WHERE origin = ?', origin);
    if (row === null) return null;
    const { id: _, repId, ...note } = noteOf(row);
    return { origin, rep: repId === null ? null : this.#originOf('rep', repId), note };
  }

  close(): void {
    if (!this.#open) return;
    this.#open = false;
    this.#db.exec('COMMIT');
  }

  /** In order of instant and identity. */
  *#origins(table: Table, query: KeptQuery): Iterable<string> {
    let after: readonly SqlValue[] = [];
    for (;;) {
      const { sql, values } = partOf(table, query, after);
      const rows: Place[] = this.#db.all<Place>(
        `SELECT ${table}.origin, ${table}.utc_ms ${sql} ORDER BY ${table}.utc_ms, ${table}.origin LIMIT ${AT_ONCE}`,
        ...values,
      );
      for (const { origin } of rows) yield origin;
      const last = rows.at(-1);
      if (last === undefined || rows.length < AT_ONCE) return;
      after = [last.utc_ms, last.origin];
    }
  }

  #originOf(table: 'practice' | 'rep', id: number): string | null {
    const row = this.#db.get<{ origin: string }>(`SELECT origin FROM ${table} WHERE id = ?`, id);
    return row?.origin ?? null;
  }
}

function fieldsOf({
  id: _id,
  practice: _practice,
  outcomes: _outcomes,
  ...fields
}: StoredRep): RepFields {
  return fields;
}

/** @param after instant and identity of the last one that is known; empty for the first ones */
function partOf(
  table: Table,
  { driver, sinceUtcMs }: KeptQuery,
  after: readonly SqlValue[],
): { readonly sql: string; readonly values: readonly SqlValue[] } {
  const part = PARTS[table];
  const conditions: [sql: string, values: readonly SqlValue[]][] = [
    [part.driver, driver === undefined ? [] : [driver]],
    [part.since, sinceUtcMs === undefined ? [] : [sinceUtcMs]],
    [`(${table}.utc_ms, ${table}.origin) > (?, ?)`, after],
  ];
  const given = conditions.filter(([, values]) => values.length > 0);
  const where = given.map(([sql]) => sql).join(' AND ');
  return {
    sql: `${part.from} ${where === '' ? '' : `WHERE ${where}`}`,
    values: given.flatMap(([, values]) => values),
  };
}

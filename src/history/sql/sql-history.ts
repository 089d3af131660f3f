import { measuresOf } from '../../consistency/measure-columns.ts';
import type { RepColumns } from '../../consistency/rep-columns.ts';
import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { Problem } from '../../problem.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { Track } from '../../trace/track.ts';
import { decodeBrake, decodeRecord } from '../codec/decode-record.ts';
import { encodeRecord } from '../codec/encode-record.ts';
import { importEntry } from '../journal/import-entry.ts';
import { readStaged } from '../journal/staging.ts';
import type { HistorySnapshot } from '../kept.ts';
import { newId } from '../new-id.ts';
import type {
  DrivenSum,
  HistoryStore,
  NewNote,
  NewRep,
  NoteQuery,
  PracticeStart,
  RepQuery,
  StoredNote,
  StoredPractice,
  StoredRep,
} from '../store.ts';
import { writeBackup } from '../write-backup.ts';
import { keepAnswer, keptAnswer } from './kept-answers.ts';
import { insertNote, notesOf } from './note-row.ts';
import { insertOutcome, outcomesOf } from './outcome-row.ts';
import { packedColumns } from './packed-columns.ts';
import { practicePacks } from './practice-packs.ts';
import { insertPractice, PRACTICE_COLUMNS, type PracticeRow, practiceOf } from './practice-row.ts';
import { repFilter } from './rep-filter.ts';
import { insertRep, insertSelfRating, REP_SELECT, type RepRow, repOf } from './rep-row.ts';
import type { SqlDatabase } from './sql-database.ts';
import { fromRows } from './sql-problem.ts';
import { SqlSnapshot } from './sql-snapshot.ts';

/** The history in an SQLite file, over either driver. */
export class SqlHistory implements HistoryStore {
  readonly label: string;
  readonly notice = null;
  readonly #db: SqlDatabase;

  constructor(db: SqlDatabase, label: string) {
    this.#db = db;
    this.label = label;
  }

  startPractice(start: PracticeStart): number {
    return this.#db.transaction(() => insertPractice(this.#db, start, newId()));
  }

  addRep(practiceId: number, rep: NewRep): number {
    const samples = encodeRecord(rep.record);
    return this.#db.transaction(() => {
      this.#expect('practice', practiceId);
      const repId = insertRep(this.#db, practiceId, rep, newId());
      this.#db.run('INSERT INTO samples (rep_id, bytes) VALUES (?, ?)', repId, samples);
      if (rep.outcome !== null) insertOutcome(this.#db, repId, rep.outcome);
      return repId;
    });
  }

  addOutcome(repId: number, outcome: RepOutcome): void {
    this.#db.transaction(() => {
      this.#expect('rep', repId);
      insertOutcome(this.#db, repId, outcome);
    });
  }

  addSelfRating(repId: number, selfRating: string): void {
    this.#db.transaction(() => {
      this.#expect('rep', repId);
      insertSelfRating(this.#db, repId, selfRating);
    });
  }

  addNote(note: NewNote): number {
    return this.#db.transaction(() => {
      if (note.repId !== null) this.#expect('rep', note.repId);
      return insertNote(this.#db, note, newId());
    });
  }

  notes(query: NoteQuery): readonly StoredNote[] {
    return notesOf(this.#db, query);
  }

  practices(driver?: string): readonly StoredPractice[] {
    const [where, values] = driver === undefined ? ['', []] : ['WHERE driver = ?', [driver]];
    return this.#db
      .all<PracticeRow>(
        `SELECT ${PRACTICE_COLUMNS} FROM practice ${where} ORDER BY utc_ms, id`,
        ...values,
      )
      .map(practiceOf);
  }

  /** Ids first, then rep by rep, so that a long history is not held in memory and the caller may write meanwhile. */
  *reps(query: RepQuery): Iterable<StoredRep> {
    const { sql, values } = repFilter(query);
    const ids = this.#db.all<{ id: number }>(
      `SELECT rep.id FROM rep JOIN practice ON practice.id = rep.practice_id ${sql}`,
      ...values,
    );
    for (const { id } of ids.reverse()) {
      const row = this.#db.get<RepRow>(`${REP_SELECT} WHERE rep.id = ?`, id);
      if (row !== null) yield fromRows(this.#db.file, () => repOf(row, outcomesOf(this.#db, id)));
    }
  }

  measures(query: RepQuery): readonly RepMeasure[] {
    return measuresOf(this.columns(query));
  }

  columns(query: RepQuery): RepColumns {
    return fromRows(this.#db.file, () => packedColumns(practicePacks(this.#db, query), query));
  }

  record(repId: number): RepRecord {
    return decodeRecord(this.#samples(repId), `${this.#db.file}, rep ${repId}`);
  }

  brake(repId: number): Track {
    return decodeBrake(this.#samples(repId), `${this.#db.file}, rep ${repId}`);
  }

  keptAnswer(name: string): string | null {
    return keptAnswer(this.#db, name);
  }

  keepAnswer(name: string, practiceId: number, text: string): void {
    keepAnswer(this.#db, name, practiceId, text);
  }

  lastRepUtcMs(driver: string): number | null {
    const row = this.#db.get<{ last: number | null }>(
      'SELECT max(rep.utc_ms) AS last FROM practice JOIN rep ON rep.practice_id = practice.id WHERE driver = ?',
      driver,
    );
    return row?.last ?? null;
  }

  drivenSums(driver: string): readonly DrivenSum[] {
    return this.#db.all<DrivenSum>(
      `SELECT target_id AS targetId, corner, sum(voided IS NULL) AS reps, max(rep.utc_ms) AS lastUtcMs
       FROM practice JOIN rep ON rep.practice_id = practice.id WHERE driver = ? GROUP BY target_id, corner`,
      driver,
    );
  }

  /** SQLite copies what is committed, from one moment: https://www.sqlite.org/lang_vacuum.html#vacuuminto */
  backup(path: string): void {
    writeBackup(path, () => this.#db.run('VACUUM INTO ?', path));
  }

  snapshot(): HistorySnapshot {
    return new SqlSnapshot(this.#db);
  }

  takeIn(staged: string, entries: number): void {
    this.#db.transaction(() => {
      for (const entry of readStaged(staged, entries)) importEntry(this.#db, entry);
    });
  }

  close(): void {
    this.#db.close();
  }

  #samples(repId: number): Uint8Array {
    const row = this.#db.get<{ bytes: Uint8Array }>(
      'SELECT bytes FROM samples WHERE rep_id = ?',
      repId,
    );
    if (row === null) this.#expect('rep', repId);
    return row?.bytes ?? new Uint8Array(0);
  }

  #expect(table: 'practice' | 'rep', id: number): void {
    if (this.#db.get(`SELECT 1 FROM ${table} WHERE id = ?`, id) === null)
      throw new Problem(`there is no ${table} ${id}`, {
        where: this.#db.file,
        next: 'Check the number; `ebbline progress` shows what the history holds.',
      });
  }
}

import { copyFileSync, readSync } from 'node:fs';
import { measureColumns } from '../../consistency/measure-columns.ts';
import type { RepColumns } from '../../consistency/rep-columns.ts';
import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { Problem } from '../../problem.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { Track } from '../../trace/track.ts';
import { alreadyRated } from '../already-rated.ts';
import { decodeRecord } from '../codec/decode-record.ts';
import { encodeRecord } from '../codec/encode-record.ts';
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
import { drivenSums } from './driven-sums.ts';
import { appendToJournal } from './journal-file.ts';
import { type JournalEntry, parseJournalLine } from './journal-line.ts';
import { JournalSnapshot } from './journal-snapshot.ts';
import { type JournalPractice, type JournalRep, JournalState } from './journal-state.ts';
import { JournalTail } from './journal-tail.ts';
import { matchingNotes } from './matching-notes.ts';
import { matchingReps } from './matching-reps.ts';
import { repMeasures } from './rep-measures.ts';
import { takeInJournal } from './take-in-journal.ts';

/**
 * The history where no SQLite loads: a file that only grows, one line for each practice, rep and outcome, synced line
 * by line. A later start that has SQLite imports it.
 */
export class JournalHistory implements HistoryStore {
  readonly label: string;
  readonly notice: string | null;
  readonly #path: string;
  readonly #state = new JournalState();
  readonly #tail: JournalTail;

  constructor(path: string, label: string, notice: string | null) {
    this.#path = path;
    this.label = label;
    this.notice = notice;
    this.#tail = new JournalTail(path);
    this.#catchUp();
  }

  startPractice(start: PracticeStart): number {
    const origin = newId();
    this.#append({ kind: 'practice', origin, start });
    return this.#state.practiceId(origin);
  }

  addRep(practiceId: number, newRep: NewRep): number {
    const practice = this.#practice(practiceId);
    const { record, ...rep } = newRep;
    const samples = Buffer.from(encodeRecord(record)).toString('base64');
    const origin = newId();
    this.#append({ kind: 'rep', origin, practice: practice.origin, rep, samples }, practice);
    return this.#state.repId(origin);
  }

  addOutcome(repId: number, outcome: RepOutcome): void {
    const { origin, outcomes } = this.#rep(repId);
    if (outcomes.some(({ version }) => version === outcome.version))
      throw new Problem(`rep ${repId} already has a score of version ${outcome.version}`, {
        where: this.#path,
        next: 'Leave it: a stored score is never rewritten.',
      });
    this.#append({ kind: 'outcome', rep: origin, outcome });
  }

  addSelfRating(repId: number, selfRating: string): void {
    const { origin, stored } = this.#rep(repId);
    if (stored.selfRating !== null) throw alreadyRated(repId, this.#path);
    this.#append({ kind: 'rating', rep: origin, selfRating });
  }

  addNote(newNote: NewNote): number {
    const { repId, ...note } = newNote;
    const rep = repId === null ? null : this.#rep(repId).origin;
    const origin = newId();
    this.#append({ kind: 'note', origin, rep, note });
    return this.#state.noteId(origin);
  }

  notes(query: NoteQuery): readonly StoredNote[] {
    this.#catchUp();
    return matchingNotes(
      this.#state.notes.map(({ stored }) => stored),
      query,
    );
  }

  practices(driver?: string): readonly StoredPractice[] {
    this.#catchUp();
    return this.#state.practices
      .map(({ stored }) => stored)
      .filter((practice) => driver === undefined || practice.driver === driver)
      .sort((a, b) => a.startedAt.utcMs - b.startedAt.utcMs || a.id - b.id);
  }

  *reps(query: RepQuery): Iterable<StoredRep> {
    this.#catchUp();
    yield* matchingReps(
      this.#state.reps.map(({ stored }) => stored),
      query,
    );
  }

  measures(query: RepQuery): readonly RepMeasure[] {
    return repMeasures(this.reps(query));
  }

  columns(query: RepQuery): RepColumns {
    return measureColumns(this.measures(query));
  }

  record(repId: number): RepRecord {
    return this.#recordOf(this.#rep(repId));
  }

  brake(repId: number): Track {
    return this.record(repId).brake;
  }

  keptAnswer(): null {
    return null;
  }

  keepAnswer(): void {
    // a journal holds what people did, and nothing that is ever taken back
  }

  #recordOf({ place, stored: { id: repId } }: JournalRep): RepRecord {
    const line = Buffer.alloc(place.length - 1);
    readSync(place.fd, line, 0, line.length, place.offset);
    const where = `${this.#path}, rep ${repId}`;
    const entry = parseJournalLine(line.toString('utf8'), where);
    const samples = entry?.kind === 'rep' ? entry.samples : '';
    return decodeRecord(Buffer.from(samples, 'base64'), where);
  }

  lastRepUtcMs(driver: string): number | null {
    const [last] = this.reps({ driver, limit: 1 });
    return last?.at.utcMs ?? null;
  }

  drivenSums(driver: string): readonly DrivenSum[] {
    return drivenSums(this.reps({ driver }));
  }

  /** A line that another program is just writing is passed over when the copy is read. */
  backup(path: string): void {
    writeBackup(path, () => copyFileSync(this.#path, path));
  }

  snapshot(): HistorySnapshot {
    this.#catchUp();
    return new JournalSnapshot(this.#state, (rep) => this.#recordOf(rep));
  }

  takeIn(staged: string, entries: number): void {
    takeInJournal(this.#path, staged, entries);
    this.#catchUp();
  }

  close(): void {
    this.#tail.close();
  }

  /**
   * Until the line is in the file that a later import will find, and was read back from it: an import may rename the
   * file at any moment. A new file lacks the practice, which is written again with its origin.
   */
  #append(entry: JournalEntry, practice?: JournalPractice): void {
    for (;;) {
      this.#catchUp();
      const isHere = practice === undefined || practice.fd === this.#tail.current();
      const again = isHere ? [] : [practiceEntry(practice)];
      if (!appendToJournal(this.#path, [...again, entry])) continue;
      this.#catchUp();
      if (this.#state.holds(entry)) return;
    }
  }

  #catchUp(): void {
    for (const entry of this.#tail.news()) this.#state.add(entry);
  }

  #practice(id: number): JournalPractice {
    this.#catchUp();
    return this.#state.practices[id - 1] ?? missing('practice', id, this.#path);
  }

  #rep(id: number): JournalRep {
    this.#catchUp();
    return this.#state.reps[id - 1] ?? missing('rep', id, this.#path);
  }
}

function practiceEntry({ origin, stored }: JournalPractice): JournalEntry {
  const { id: _, ...start } = stored;
  return { kind: 'practice', origin, start };
}

function missing(what: 'practice' | 'rep', id: number, where: string): never {
  throw new Problem(`there is no ${what} ${id}`, {
    where,
    next: 'Check the number; `ebbline progress` shows what the history holds.',
  });
}

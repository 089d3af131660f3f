import type { RepRecord } from '../../trace/rep-record.ts';
import type {
  HistorySnapshot,
  KeptCounts,
  KeptNote,
  KeptPractice,
  KeptQuery,
  KeptRep,
} from '../kept.ts';
import type { JournalNote, JournalPractice, JournalRep, JournalState } from './journal-state.ts';

/** What a journal had said up to one moment. */
export class JournalSnapshot implements HistorySnapshot {
  readonly #practices: readonly KeptPractice[];
  readonly #reps: readonly KeptRep[];
  readonly #notes: readonly KeptNote[];
  readonly #practiceBy: ReadonlyMap<string, KeptPractice>;
  readonly #repBy: ReadonlyMap<string, KeptRep>;
  readonly #noteBy: ReadonlyMap<string, KeptNote>;

  /** @param read the samples of a rep */
  constructor(state: JournalState, read: (rep: JournalRep) => RepRecord) {
    const practiceOf = new Map(state.practices.map(({ origin, stored }) => [stored.id, origin]));
    const repOf = new Map(state.reps.map(({ origin, stored }) => [stored.id, origin]));
    this.#practices = sorted(
      state.practices.map(keptPractice),
      ({ start }) => start.startedAt.utcMs,
    );
    this.#reps = sorted(
      state.reps.map((rep) => keptRep(rep, practiceOf, read)),
      ({ fields }) => fields.at.utcMs,
    );
    this.#notes = sorted(
      state.notes.map((note) => keptNote(note, repOf)),
      ({ note }) => note.at.utcMs,
    );
    this.#practiceBy = byOrigin(this.#practices);
    this.#repBy = byOrigin(this.#reps);
    this.#noteBy = byOrigin(this.#notes);
  }

  counts(query: KeptQuery): KeptCounts {
    return {
      practices: this.practices(query).length,
      reps: this.reps(query).length,
      notes: this.notes(query).length,
    };
  }

  practices(query: KeptQuery): readonly KeptPractice[] {
    const driven = new Set(this.reps(query).map(({ practice }) => practice));
    return this.#practices.filter(
      ({ origin, start }) =>
        (query.driver ?? start.driver) === start.driver &&
        (query.sinceUtcMs === undefined || driven.has(origin)),
    );
  }

  reps({ driver, sinceUtcMs }: KeptQuery): readonly KeptRep[] {
    return this.#reps.filter(
      (rep) =>
        (driver === undefined || this.practice(rep.practice)?.start.driver === driver) &&
        rep.fields.at.utcMs >= (sinceUtcMs ?? Number.NEGATIVE_INFINITY),
    );
  }

  notes({ driver, sinceUtcMs }: KeptQuery): readonly KeptNote[] {
    return this.#notes.filter(({ rep, note }) => {
      const about = rep === null ? null : this.rep(rep);
      const whose = about === null ? note.driver : this.practice(about.practice)?.start.driver;
      const when = about?.fields.at.utcMs ?? note.at.utcMs;
      return (driver ?? whose) === whose && when >= (sinceUtcMs ?? Number.NEGATIVE_INFINITY);
    });
  }

  practice(origin: string): KeptPractice | null {
    return this.#practiceBy.get(origin) ?? null;
  }

  rep(origin: string): KeptRep | null {
    return this.#repBy.get(origin) ?? null;
  }

  note(origin: string): KeptNote | null {
    return this.#noteBy.get(origin) ?? null;
  }

  close(): void {}
}

function keptPractice({ origin, stored: { id: _, ...start } }: JournalPractice): KeptPractice {
  return { origin, start };
}

function keptRep(
  rep: JournalRep,
  practiceOf: ReadonlyMap<number, string>,
  read: (rep: JournalRep) => RepRecord,
): KeptRep {
  const { id: _, practice, outcomes, ...fields } = rep.stored;
  return {
    origin: rep.origin,
    practice: practiceOf.get(practice.id)!,
    fields,
    outcomes: [...outcomes],
    record: () => read(rep),
  };
}

function keptNote(
  { origin, stored: { id: _, repId, ...note } }: JournalNote,
  repOf: ReadonlyMap<number, string>,
): KeptNote {
  return { origin, rep: repId === null ? null : (repOf.get(repId) ?? null), note };
}

function sorted<T extends { readonly origin: string }>(
  all: readonly T[],
  utcMs: (one: T) => number,
): T[] {
  return all.toSorted((a, b) => utcMs(a) - utcMs(b) || compareBytes(a.origin, b.origin));
}

function byOrigin<T extends { readonly origin: string }>(all: readonly T[]): Map<string, T> {
  return new Map(all.map((kept) => [kept.origin, kept]));
}

/** As SQLite compares texts. */
function compareBytes(a: string, b: string): number {
  return Buffer.compare(Buffer.from(a), Buffer.from(b));
}

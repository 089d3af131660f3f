import type { RepOutcome } from '../score/rep-score.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { NewNote, NewRep, PracticeStart } from './store.ts';

/** A rep without its samples and outcomes. */
export type RepFields = Omit<NewRep, 'record' | 'outcome'>;

/**
 * A practice with its identity: a text that stays the same in every copy of a history, however often it is exported
 * and imported, while ids are those of one file.
 */
export interface KeptPractice {
  readonly origin: string;
  readonly start: PracticeStart;
}

export interface KeptRep {
  readonly origin: string;
  /** Identity of its practice. */
  readonly practice: string;
  readonly fields: RepFields;
  /** By score version, oldest first. */
  readonly outcomes: readonly RepOutcome[];
  /** Reads the samples. */
  record(): RepRecord;
}

export interface KeptNote {
  readonly origin: string;
  /** Identity of the rep it is about; null for none. */
  readonly rep: string | null;
  readonly note: Omit<NewNote, 'repId'>;
}

export interface KeptQuery {
  readonly driver?: string;
  /** Reps at this instant or later, the practices they belong to, and notes on them or of no rep and as late. */
  readonly sinceUtcMs?: number;
}

/** How much there is of something. */
export interface KeptCounts {
  readonly practices: number;
  readonly reps: number;
  readonly notes: number;
}

/**
 * The history as it is at one moment, whatever other programs write meanwhile. Everything comes in order of its
 * instant, and where that is the same of its identity, so that two histories with the same content say the same.
 */
export interface HistorySnapshot {
  counts(query: KeptQuery): KeptCounts;
  practices(query: KeptQuery): Iterable<KeptPractice>;
  reps(query: KeptQuery): Iterable<KeptRep>;
  notes(query: KeptQuery): Iterable<KeptNote>;
  /** By identity; null where there is none. */
  practice(origin: string): KeptPractice | null;
  rep(origin: string): KeptRep | null;
  note(origin: string): KeptNote | null;
  /** Idempotent. Nothing else of the history may be called before. */
  close(): void;
}

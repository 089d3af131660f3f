import type { RepColumns } from '../consistency/rep-columns.ts';
import type { RepMeasure } from '../consistency/rep-measure.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import type { Feedback } from '../drill/drill-view.ts';
import type { RepOrder, RepPhase } from '../drill/plan/practice-plan.ts';
import type { TargetChange } from '../drill/plan/target-change.ts';
import type { LiveStart } from '../live/live-start.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { Track } from '../trace/track.ts';
import type { HistorySnapshot } from './kept.ts';

export type { ZonedInstant } from '../consistency/zoned-instant.ts';

export type PhaseTag = RepPhase;
export type Foot = 'left' | 'right';
export type SourceKind = 'hid' | 'virtual' | 'pointer' | 'replay';

/** What is the same for all reps between opening and closing the drill. */
export interface PracticeStart {
  readonly driver: string;
  readonly startedAt: ZonedInstant;
  readonly source: SourceKind;
  readonly foot: Foot;
  readonly footwear: string;
  /** Hash of the rig's devices and calibration: a change of it breaks comparability. */
  readonly calibrationId: string;
  readonly sensor: 'force' | 'pressure' | 'travel' | 'unknown';
  readonly seed: number | null;
}

/** One finished rep, written in one transaction. Void reps (aborted, device lost) are kept with their reason. */
export interface NewRep {
  readonly at: ZonedInstant;
  readonly car: string | null;
  readonly corner: string | null;
  readonly variant: string | null;
  readonly condition: string | null;
  /** What the zone began with in the drill with the live car; null in one over time. */
  readonly live: LiveStart | null;
  readonly targetId: string;
  readonly targetVersion: string;
  /** Null for the target as its file has it. */
  readonly targetChange: TargetChange | null;
  /** Place in the practice and in its block, from 1. */
  readonly number: number;
  readonly block: number;
  readonly phase: PhaseTag;
  readonly order: RepOrder;
  readonly feedback: Feedback;
  readonly selfRating: string | null;
  readonly voided: 'aborted' | 'device lost' | null;
  readonly record: RepRecord;
  /** Null for a void rep. */
  readonly outcome: RepOutcome | null;
}

/** A driver's own words on a place or a rep. Text of any length and content: make it safe where it is printed. */
export interface NewNote {
  readonly at: ZonedInstant;
  readonly driver: string;
  /** Empty for a mark set while driving, to be put into words later. */
  readonly text: string;
  readonly car: string | null;
  readonly corner: string | null;
  readonly variant: string | null;
  readonly gear: number | null;
  /** Id of the rep it is about; null for none. */
  readonly repId: number | null;
}

export interface StoredNote extends NewNote {
  readonly id: number;
}

export interface NoteQuery {
  readonly driver?: string;
  readonly corner?: string;
  readonly repId?: number;
}

export interface StoredPractice extends PracticeStart {
  readonly id: number;
}

/** A rep without its samples. */
export interface StoredRep extends Omit<NewRep, 'record' | 'outcome'> {
  readonly id: number;
  readonly practice: StoredPractice;
  /** By score version, oldest first; a stored outcome is never rewritten. */
  readonly outcomes: readonly RepOutcome[];
}

/** What a driver drove of one target in one corner, or in none. */
export interface DrivenSum {
  readonly targetId: string;
  readonly corner: string | null;
  /** Void ones are not counted. */
  readonly reps: number;
  /** Instant of the last rep, be it void. */
  readonly lastUtcMs: number;
}

export interface RepQuery {
  readonly driver?: string;
  readonly targetId?: string;
  readonly targetVersion?: string;
  readonly corner?: string;
  /** Reps at this instant or later. */
  readonly sinceUtcMs?: number;
  readonly practiceId?: number;
  /** Only the newest so many; they still come oldest first. */
  readonly limit?: number;
}

/**
 * The history of practices and reps. All calls are synchronous; the drill makes them only between reps. Every call
 * throws a Problem where the file is damaged, locked, read-only or full, and for a practice or rep that is not there.
 */
export interface HistoryStore {
  /** For messages: which of the implementations, and the file. */
  readonly label: string;
  /** One sentence for the driver where a part of the history cannot be read here, else null. */
  readonly notice: string | null;
  startPractice(start: PracticeStart): number;
  /**
   * Durable when it returns: neither the end of the program nor that of the power takes the rep away. Samples are
   * kept as `quantiseRecord` rounds them; score that record.
   */
  addRep(practiceId: number, rep: NewRep): number;
  /** Adds an outcome beside the stored ones; refuses a version that is already there. */
  addOutcome(repId: number, outcome: RepOutcome): void;
  /** Adds what the driver said about a rep; refuses a second word. */
  addSelfRating(repId: number, selfRating: string): void;
  /** Durable when it returns; a note is never changed. @returns its id */
  addNote(note: NewNote): number;
  /** Oldest first. */
  notes(query: NoteQuery): readonly StoredNote[];
  practices(driver?: string): readonly StoredPractice[];
  /** Oldest first. */
  reps(query: RepQuery): Iterable<StoredRep>;
  /** The same reps as numbers for statistics, oldest first; no samples are read. */
  measures(query: RepQuery): readonly RepMeasure[];
  /** The same as columns, which takes no object for each rep. */
  columns(query: RepQuery): RepColumns;
  record(repId: number): RepRecord;
  /** The brake of the record alone, which takes a third of the time. */
  brake(repId: number): Track;
  /**
   * What `keepAnswer` kept under this name; null where there is nothing, or something of the practice was written since.
   */
  keptAnswer(name: string): string | null;
  /**
   * Keeps what was worked out of a practice's reps, so that the next who asks need not work it out again. Where it
   * cannot be kept (a journal, a file that is read-only) nothing happens.
   *
   * @param name what it is; an earlier answer of this name, of whichever practice, is dropped
   */
  keepAnswer(name: string, practiceId: number, text: string): void;
  /** Latest instant of any rep of the driver, null for a new driver. */
  lastRepUtcMs(driver: string): number | null;
  /** The driver's reps by target and corner, in no order; years of them take no longer than it takes to count them. */
  drivenSums(driver: string): readonly DrivenSum[];
  /**
   * Writes a whole copy of the history as it is now to a new file, durable when it returns; other programs may go on
   * writing meanwhile. Under the name of the file it comes from, a copy is a history again.
   * @throws Problem where the file is there already or cannot be written; then no file is left behind
   */
  backup(path: string): void;
  /** To read it whole, with identities that outlast this file; close it before anything else is done. */
  snapshot(): HistorySnapshot;
  /**
   * Adds what a staged file says (see `Staging`), all of it or nothing: neither a crash nor a full disk leaves a part.
   * What is known already by its identity stays as it is.
   * @param entries how many the file has to hold
   */
  takeIn(staged: string, entries: number): void;
  /** Idempotent. */
  close(): void;
}

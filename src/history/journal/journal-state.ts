import type { RepOutcome } from '../../score/rep-score.ts';
import type { StoredNote, StoredPractice, StoredRep } from '../store.ts';
import type { PlacedEntry } from './journal-file.ts';
import type { JournalEntry } from './journal-line.ts';

type Entry<Kind> = Extract<JournalEntry, { readonly kind: Kind }>;

export interface JournalRep {
  readonly origin: string;
  stored: StoredRep;
  readonly outcomes: RepOutcome[];
  readonly place: PlacedEntry;
}

export interface JournalPractice {
  readonly origin: string;
  /** The newest file in which it stands. */
  fd: number;
  readonly stored: StoredPractice;
}

export interface JournalNote {
  readonly origin: string;
  readonly stored: StoredNote;
}

/** What the lines of a journal add up to. Ids count practices and reps in file order, from 1. Samples stay on disk. */
export class JournalState {
  readonly practices: JournalPractice[] = [];
  readonly reps: JournalRep[] = [];
  readonly notes: JournalNote[] = [];
  readonly #practiceByOrigin = new Map<string, JournalPractice>();
  readonly #repByOrigin = new Map<string, JournalRep>();
  readonly #noteByOrigin = new Map<string, JournalNote>();

  /** Takes each entry once, as the import does. */
  add(place: PlacedEntry): void {
    const { entry } = place;
    if (entry.kind === 'practice') this.#addPractice(entry, place.fd);
    else if (entry.kind === 'outcome') this.#addOutcome(entry.rep, entry.outcome);
    else if (entry.kind === 'rating') this.#addRating(entry);
    else if (entry.kind === 'note') this.#addNote(entry);
    else this.#addRep(entry, place);
  }

  /** True once an entry has been taken. */
  holds(entry: JournalEntry): boolean {
    if (entry.kind === 'practice') return this.#practiceByOrigin.has(entry.origin);
    if (entry.kind === 'rep') return this.#repByOrigin.has(entry.origin);
    if (entry.kind === 'note') return this.#noteByOrigin.has(entry.origin);
    if (entry.kind === 'rating')
      return (this.#repByOrigin.get(entry.rep)?.stored.selfRating ?? null) !== null;
    const outcomes = this.#repByOrigin.get(entry.rep)?.outcomes ?? [];
    return outcomes.some(({ version }) => version === entry.outcome.version);
  }

  repId(origin: string): number {
    return this.#repByOrigin.get(origin)?.stored.id ?? 0;
  }

  noteId(origin: string): number {
    return this.#noteByOrigin.get(origin)?.stored.id ?? 0;
  }

  practiceId(origin: string): number {
    return this.#practiceByOrigin.get(origin)?.stored.id ?? 0;
  }

  #addPractice({ origin, start }: Entry<'practice'>, fd: number): void {
    const known = this.#practiceByOrigin.get(origin);
    if (known !== undefined) {
      known.fd = fd;
      return;
    }
    const practice = { origin, fd, stored: { id: this.practices.length + 1, ...start } };
    this.practices.push(practice);
    this.#practiceByOrigin.set(origin, practice);
  }

  #addRep(entry: Entry<'rep'>, place: PlacedEntry): void {
    const practice = this.#practiceByOrigin.get(entry.practice);
    if (practice === undefined || this.#repByOrigin.has(entry.origin)) return;
    const { outcome, ...fields } = entry.rep;
    const outcomes = outcome === null ? [] : [outcome];
    const id = this.reps.length + 1;
    const stored = { ...fields, id, practice: practice.stored, outcomes };
    const rep = { origin: entry.origin, stored, outcomes, place };
    this.reps.push(rep);
    this.#repByOrigin.set(entry.origin, rep);
  }

  #addOutcome(origin: string, outcome: RepOutcome): void {
    const outcomes = this.#repByOrigin.get(origin)?.outcomes ?? [];
    if (outcomes.some(({ version }) => version === outcome.version)) return;
    outcomes.push(outcome);
    outcomes.sort((a, b) => a.version - b.version);
  }

  #addNote({ origin, rep, note }: Entry<'note'>): void {
    if (this.#noteByOrigin.has(origin)) return;
    const repId = rep === null ? null : (this.#repByOrigin.get(rep)?.stored.id ?? null);
    const stored = { ...note, id: this.notes.length + 1, repId };
    const kept = { origin, stored };
    this.notes.push(kept);
    this.#noteByOrigin.set(origin, kept);
  }

  #addRating({ rep: origin, selfRating }: Entry<'rating'>): void {
    const rep = this.#repByOrigin.get(origin);
    if (rep !== undefined && rep.stored.selfRating === null)
      rep.stored = { ...rep.stored, selfRating };
  }
}

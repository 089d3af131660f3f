import type { JournalEntry } from '../journal/journal-line.ts';

/** How an archive is to be taken in. */
export interface StageOptions {
  /** Whose history it is to be here; null for what the archive says. */
  readonly driver: string | null;
  /** Name under which whoever gave none is kept. */
  readonly unnamed: string;
  /** Takes what is to be written, in order. */
  readonly stage: (entry: JournalEntry) => void;
  /** Told after each rep; throws to give up. */
  readonly repDone: () => void;
}

import { LONGEST_NOTE } from '../drill/note-typing.ts';
import type { StoredNote } from '../history/store.ts';

/** Longest text of a note, in characters. */
export const LONGEST_TEXT: number = LONGEST_NOTE;

/** All notes but marks on reps that were put into words since. */
export function wordedNotes(notes: readonly StoredNote[]): readonly StoredNote[] {
  const worded = new Set(notes.filter(({ text }) => text !== '').map(({ repId }) => repId));
  return notes.filter(({ text, repId }) => text !== '' || !worded.has(repId));
}

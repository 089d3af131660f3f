import type { StoredNote } from '../history/store.ts';

/** Longest text of a note, in characters: a few sentences, so that a brief stays a page. */
export const LONGEST_TEXT = 500;

/** All notes but marks on reps that were put into words since. */
export function wordedNotes(notes: readonly StoredNote[]): readonly StoredNote[] {
  const worded = new Set(notes.filter(({ text }) => text !== '').map(({ repId }) => repId));
  return notes.filter(({ text, repId }) => text !== '' || !worded.has(repId));
}

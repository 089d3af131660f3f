import type { NoteQuery, StoredNote } from '../store.ts';

/** The notes a query asks for, oldest first: what the SQL of the database does, over a list. */
export function matchingNotes(notes: readonly StoredNote[], query: NoteQuery): StoredNote[] {
  return notes
    .filter(
      ({ driver, corner, repId }) =>
        (query.driver ?? driver) === driver &&
        (query.corner === undefined || query.corner === corner) &&
        (query.repId === undefined || query.repId === repId),
    )
    .sort((a, b) => a.at.utcMs - b.at.utcMs || a.id - b.id);
}

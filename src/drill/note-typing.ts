/** Longest text of a note, in characters: a few sentences, so that a brief stays a page. */
export const LONGEST_NOTE = 500;

/** The words of a note on a rep as far as they are typed. */
export interface NoteUnderWay {
  /** Number of the rep in the practice. */
  readonly rep: number;
  readonly text: string;
}

/** What a key does to a note. */
export type NoteKey =
  | { readonly kind: 'character'; readonly text: string }
  /** Takes the last character away. */
  | { readonly kind: 'erase' }
  /** Keeps the note. */
  | { readonly kind: 'done' }
  /** Leaves it at the mark. */
  | { readonly kind: 'skip' };

/** The text after one more character, or one less; one that is full stays. */
export function typed(
  text: string,
  key: Extract<NoteKey, { kind: 'character' | 'erase' }>,
): string {
  const letters = [...text];
  if (key.kind === 'erase') return letters.slice(0, -1).join('');
  return letters.length < LONGEST_NOTE ? text + key.text : text;
}

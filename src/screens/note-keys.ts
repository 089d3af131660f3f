import type { NoteKey } from '../drill/note-typing.ts';

const NAMED: ReadonlyMap<string, NoteKey> = new Map<string, NoteKey>([
  ['space', { kind: 'character', text: ' ' }],
  ['backspace', { kind: 'erase' }],
  ['C-h', { kind: 'erase' }],
  ['enter', { kind: 'done' }],
  ['escape', { kind: 'skip' }],
]);

/** What a key means while a note is typed, by the terminal library's name of it; null for nothing. */
export function noteKey(name: string): NoteKey | null {
  const named = NAMED.get(name);
  if (named !== undefined) return named;
  // a letter, mark, number, sign or symbol: nothing that steers a terminal
  if (/^[\p{L}\p{N}\p{P}\p{S}]$/u.test(name)) return { kind: 'character', text: name };
  // with shift the library has the name of the key alone
  const shifted = /^S-(\p{L})$/u.exec(name)?.[1];
  return shifted === undefined ? null : { kind: 'character', text: shifted.toUpperCase() };
}

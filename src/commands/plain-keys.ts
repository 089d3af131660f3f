import { type Observable, Subject } from 'rxjs';
import type { KeyAction } from '../drill/drill-message.ts';
import type { NoteKey } from '../drill/note-typing.ts';
import { PLAIN_KEYS, plainKey } from '../drill/plain/plain-key.ts';
import type { TypedLines } from './typed-lines.ts';

interface PlainKeys {
  readonly keys$: Observable<KeyAction>;
  readonly typed$: Observable<NoteKey>;
  stop(): void;
}

/** A line is a key, or the words of a note while one is asked for. */
export function plainKeys(
  typed: TypedLines,
  say: (line: string) => void,
  isTyping: () => boolean,
): PlainKeys {
  const keys$ = new Subject<KeyAction>();
  const typed$ = new Subject<NoteKey>();
  const listening = typed.lines$.subscribe((line) => {
    if (isTyping()) typeNote(line, typed$);
    else pressKey(line, keys$, say);
  });
  return { keys$, typed$, stop: () => listening.unsubscribe() };
}

function typeNote(line: string, typed$: Subject<NoteKey>): void {
  for (const text of line) typed$.next({ kind: 'character', text });
  typed$.next({ kind: 'done' });
}

function pressKey(line: string, keys$: Subject<KeyAction>, say: (line: string) => void): void {
  const key = plainKey(line);
  if (key === 'help') for (const text of PLAIN_KEYS) say(text);
  else if (key === null) say(`${line.trim()} is no key here; ? and Enter lists them.`);
  else keys$.next(key);
}

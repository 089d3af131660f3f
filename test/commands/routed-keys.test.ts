import { Subject } from 'rxjs';
import { expect, test } from 'vitest';
import { routedKeys } from '../../src/commands/routed-keys.ts';

test('each key goes one way: the one that opens a note is no part of it, the one that closes it no action', () => {
  const names$ = new Subject<string>();
  const seen: unknown[] = [];
  let typing = false;
  const { keys$, typed$ } = routedKeys(names$, () => typing);
  keys$.subscribe((action) => {
    seen.push(action);
    typing ||= action === 'note';
  });
  typed$.subscribe((key) => {
    seen.push(key.kind === 'character' ? key.text : key.kind);
    typing &&= key.kind !== 'done';
  });
  for (const name of ['n', 'n', 'q', 'space', 'up', 'enter', 'enter', '?', 'q']) names$.next(name);
  expect(seen).toEqual(['note', 'n', 'q', ' ', 'done', 'choose', 'finish']);
});

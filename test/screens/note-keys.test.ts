import { expect, test } from 'vitest';
import { noteKey } from '../../src/screens/note-keys.ts';

/** Names of keys as the terminal library has them. */
test.each([
  ['a', 'a'],
  ['S-a', 'A'],
  ['é', 'é'],
  ['ß', 'ß'],
  ['7', '7'],
  ['?', '?'],
  ['€', '€'],
  ['space', ' '],
])('%s types %j', (name, text) => {
  expect(noteKey(name)).toEqual({ kind: 'character', text });
});

test('the keys of the line', () => {
  expect(noteKey('enter')).toEqual({ kind: 'done' });
  expect(noteKey('escape')).toEqual({ kind: 'skip' });
  expect(noteKey('backspace')).toEqual({ kind: 'erase' });
  expect(noteKey('C-h')).toEqual({ kind: 'erase' });
});

test.each(['up', 'f1', 'S-left', 'C-a', 'M-x', 'tab', 'delete', '\u001b', '\u202e', ''])(
  '%j types nothing',
  (name) => {
    expect(noteKey(name)).toBeNull();
  },
);

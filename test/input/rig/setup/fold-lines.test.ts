import { expect, test } from 'vitest';
import { foldLines } from '../../../../src/input/rig/setup/fold-lines.ts';

test('breaks between words, keeps indents and line ends, and leaves a long word whole', () => {
  expect(foldLines('one two three', 9)).toBe('one two\nthree');
  expect(foldLines('exactly 9\nnext', 9)).toBe('exactly 9\nnext');
  expect(foldLines('  ab cd ef', 7)).toBe('  ab cd\n  ef');
  expect(foldLines('short /a/very/long/path', 8)).toBe('short\n/a/very/long/path');
  expect(foldLines('', 8)).toBe('');
  expect(foldLines('a    b', 8)).toBe('a    b');
});

import { expect, test } from 'vitest';
import { TerminalText } from './terminal-text.ts';

function screenOf(...written: readonly string[]): readonly string[] {
  const screen = new TerminalText({ cols: 6, rows: 3 });
  for (const text of written) screen.write(text);
  return screen.lines;
}

// ECMA-48, 8.3: CUP, CUF, CHA, VPA, ECH, EL and ED; places count from 1, and a number left out is 1 (of EL and ED 0).
test.each([
  ['text from the top left', 'ab', ['ab    ', '      ', '      ']],
  ['cursor position', '\x1b[2;3Hab', ['      ', '  ab  ', '      ']],
  ['cursor position left out', '\x1b[3;4H\x1b[Hab', ['ab    ', '      ', '      ']],
  ['cursor forward', 'a\x1b[2Cb\x1b[Cc', ['a  b c', '      ', '      ']],
  ['column and line', '\x1b[3d\x1b[5Gab', ['      ', '      ', '    ab']],
  ['erased characters', 'abcdef\x1b[1;2H\x1b[3X', ['a   ef', '      ', '      ']],
  ['the rest of a line erased', 'abcdef\x1b[1;3H\x1b[K', ['ab    ', '      ', '      ']],
  ['all erased', 'ab\x1b[2;1Hcd\x1b[2J', ['      ', '      ', '      ']],
  ['return and line feed', 'ab\r\ncd', ['ab    ', 'cd    ', '      ']],
  [
    'looks and modes',
    '\x1b[?2026h\x1b[1;38;5;74ma\x1b[mb\x1b[?25l',
    ['ab    ', '      ', '      '],
  ],
  ['saved cursor', 'ab\x1b7\x1b[3;1Hcd\x1b8e', ['abe   ', '      ', 'cd    ']],
])('%s', (_, written, lines) => {
  expect(screenOf(written)).toEqual(lines);
});

test('what was there stays until something is written over it', () => {
  expect(screenOf('abcdef', '\x1b[1;2HXY')).toEqual(['aXYdef', '      ', '      ']);
});

test('a sequence that it does not know is an error, not text', () => {
  expect(() => screenOf('\x1b[2S')).toThrow('2;0 S');
  expect(() => screenOf('\x1b#8')).toThrow('#8');
});

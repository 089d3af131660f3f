import { expect, test } from 'vitest';
import { printable, shown } from '../../src/profile/printable.ts';

test('control, format and separator characters become escapes', () => {
  expect(printable('a\u001b[31m\u009b\u202eb\u2028\n')).toBe(
    'a\\u{1b}[31m\\u{9b}\\u{202e}b\\u{2028}\\u{a}',
  );
});

test('letters of any script pass', () => {
  expect(printable('Größe 测试 ½')).toBe('Größe 测试 ½');
});

test('long text is cut between characters', () => {
  expect(printable('\u{1f3c1}'.repeat(9), 3)).toBe(`${'\u{1f3c1}'.repeat(3)}...`);
});

test.each([
  [[], 'a list'],
  [{}, 'a group of keys'],
  [null, 'empty'],
  ['', '""'],
  [0.5, '0.5'],
  [true, 'true'],
])('%j is shown as %s', (value, expected) => {
  expect(shown(value)).toBe(expected);
});

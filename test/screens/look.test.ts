import { describe, expect, test } from 'vitest';
import { isUtf8, lookOf } from '../../src/screens/look.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../src/screens/theme.ts';

// POSIX.1-2017, Base Definitions 8.2: LC_ALL before LC_CTYPE before LANG; an empty value counts as unset.
describe('UTF-8', () => {
  test.each([
    [{ LANG: 'en_GB.UTF-8' }, true],
    [{ LANG: 'C.utf8' }, true],
    [{ LANG: 'C' }, false],
    [{}, false],
    [{ LC_ALL: 'C', LANG: 'en_GB.UTF-8' }, false],
    [{ LC_ALL: '', LC_CTYPE: 'C.UTF-8', LANG: 'C' }, true],
  ])('%j: %s', (env, utf8) => expect(isUtf8(env, 'linux')).toBe(utf8));

  test('Windows terminals have no locale variables', () => {
    expect(isUtf8({}, 'win32')).toBe(true);
  });
});

test.each(['vt100', 'vt220'])('%s has no colours', (TERM) => {
  const { theme, unicode } = lookOf({ TERM, LANG: 'C.UTF-8' }, true, 'linux');
  expect({ theme, unicode }).toEqual({ theme: MONOCHROME_THEME, unicode: true });
});

test('a dumb terminal gets neither colour nor signs', () => {
  expect(lookOf({ TERM: 'dumb', LANG: 'C.UTF-8' }, true, 'linux')).toEqual({
    theme: MONOCHROME_THEME,
    unicode: false,
  });
});

test('the Linux console gets colour but no braille', () => {
  const env = { TERM: 'linux', LANG: 'C.UTF-8' };
  expect(lookOf(env, true, 'linux')).toEqual({ theme: COLOUR_THEME, unicode: false });
});

test('colour is the program’s decision', () => {
  const env = { TERM: 'xterm', LANG: 'C.UTF-8' };
  expect(lookOf(env, true, 'linux').theme).toBe(COLOUR_THEME);
  expect(lookOf(env, false, 'linux').theme).toBe(MONOCHROME_THEME);
});

test('without colour no pen has one, and target and driver still differ', () => {
  expect(Object.values(MONOCHROME_THEME).every(({ ink }) => ink === -1)).toBe(true);
  expect(MONOCHROME_THEME.driver).not.toEqual(MONOCHROME_THEME.target);
});

// Okabe and Ito: sky blue #56B4E9, orange #E69F00. xterm's 6x6x6 cube: 16 + 36 r + 6 g + b, levels 0 95 135 175 215 255.
test.each([
  ['target', COLOUR_THEME.target.ink, [0x5f, 0xaf, 0xd7]],
  ['driver', COLOUR_THEME.driver.ink, [0xff, 0xaf, 0x00]],
] as const)('%s has its palette entry', (_, ink, rgb) => {
  const level = (share: number) => [0, 95, 135, 175, 215, 255][share % 6];
  const cube = ink - 16;
  expect([level(Math.floor(cube / 36)), level(Math.floor(cube / 6)), level(cube)]).toEqual(rgb);
});

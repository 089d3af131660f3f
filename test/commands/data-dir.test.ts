import { describe, expect, test } from 'vitest';
import { defaultDataDir } from '../../src/commands/data-dir.ts';
import { Problem } from '../../src/problem.ts';

const HOME = (): string => '/home/me';

describe('the data folder', () => {
  test.each([
    // XDG Base Directory 0.8: $XDG_DATA_HOME, else ~/.local/share; an empty or relative path is to be ignored.
    ['linux', { XDG_DATA_HOME: '/data' }, '/data/ebbline'],
    ['linux', { XDG_DATA_HOME: '' }, '/home/me/.local/share/ebbline'],
    ['linux', { XDG_DATA_HOME: 'data' }, '/home/me/.local/share/ebbline'],
    ['darwin', {}, '/home/me/Library/Application Support/ebbline'],
    ['darwin', { XDG_DATA_HOME: '/data' }, '/data/ebbline'],
    ['win32', { LOCALAPPDATA: '/local' }, '/local/ebbline'],
    ['win32', {}, '/home/me/AppData/Local/ebbline'],
  ] as const)('on %s with %j is %s', (platform, env, expected) => {
    expect(defaultDataDir(platform, env, HOME)).toBe(expected);
  });

  test('of a user without a home has to be named', () => {
    const noHome = (): string => {
      throw new Error('uv_os_homedir returned ENOENT');
    };
    expect(() => defaultDataDir('linux', {}, noHome)).toThrow(Problem);
    expect(defaultDataDir('linux', { XDG_DATA_HOME: '/data' }, noHome)).toBe('/data/ebbline');
  });
});

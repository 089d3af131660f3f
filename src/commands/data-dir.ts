import { statSync } from 'node:fs';
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import { Problem } from '../problem.ts';
import type { OptionValue } from './command.ts';

/**
 * The platform's data folder: XDG Base Directory 0.8 (empty or relative values are ignored), Application Support on
 * macOS unless XDG is set, LOCALAPPDATA on Windows.
 *
 * @param homeOf tells the user's home, and throws where there is none
 * @throws Problem for a user without a home, as in many containers
 */
export function defaultDataDir(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  homeOf: () => string = homedir,
): string {
  const xdg = env.XDG_DATA_HOME;
  if (xdg !== undefined && xdg !== '' && isAbsolute(xdg)) return join(xdg, 'ebbline');
  if (platform === 'win32' && env.LOCALAPPDATA) return join(env.LOCALAPPDATA, 'ebbline');
  const home = known(homeOf);
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'ebbline');
  if (platform === 'win32') return join(home, 'AppData', 'Local', 'ebbline');
  return join(home, '.local', 'share', 'ebbline');
}

function known(homeOf: () => string): string {
  try {
    return homeOf();
  } catch {
    throw new Problem('there is no home folder to keep a history in', {
      next: 'Name a folder with --data-dir, or set HOME.',
    });
  }
}

/**
 * The folder that --data-dir names, there or not; null without it. An empty one, as from a variable that is not set,
 * must not stand for the history that is meant to be left alone.
 *
 * @throws Problem (exit code 2) where it is empty, or a file
 */
export function givenDataDir(value: OptionValue): string | null {
  if (typeof value !== 'string') return null;
  if (value === '') throw badFolder('it is empty');
  if (isFile(value)) throw badFolder(`${JSON.stringify(value)} is a file`);
  return value;
}

function isFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

function badFolder(what: string): Problem {
  const next = 'Name the folder of history and rig, or leave it out.';
  return new Problem(what, { where: '--data-dir', next, exitCode: 2 });
}

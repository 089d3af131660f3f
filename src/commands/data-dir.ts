import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import { Problem } from '../problem.ts';

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

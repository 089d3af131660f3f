import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/**
 * The platform's data folder: XDG Base Directory 0.8 (empty or relative values are ignored), Application Support on
 * macOS unless XDG is set, LOCALAPPDATA on Windows.
 */
export function defaultDataDir(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  home: string = homedir(),
): string {
  const xdg = env.XDG_DATA_HOME;
  if (xdg !== undefined && xdg !== '' && isAbsolute(xdg)) return join(xdg, 'ebbline');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'ebbline');
  if (platform === 'win32')
    return join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'ebbline');
  return join(home, '.local', 'share', 'ebbline');
}

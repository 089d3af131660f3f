import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { openTmux, type TmuxTerminal } from './tmux.ts';

const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;

export type OpenProgram = (
  args: readonly string[],
  size?: { readonly cols: number; readonly rows: number },
  env?: Readonly<Record<string, string>>,
) => Promise<TmuxTerminal>;

/** The built program in a terminal of its own with an empty data folder, both gone after each test. */
export function programInTerminal(): OpenProgram {
  let terminal: TmuxTerminal | null = null;
  let dataDir = '';
  afterEach(async () => {
    await terminal?.close();
    terminal = null;
    rmSync(dataDir, { recursive: true, force: true });
  });
  return async (args, size = { cols: 80, rows: 24 }, env = {}) => {
    dataDir = mkdtempSync(join(tmpdir(), 'ebbline-drill-'));
    const command = [process.execPath, MAIN, ...args, '--data-dir', dataDir];
    terminal = await openTmux(command, { ...size, env });
    return terminal;
  };
}

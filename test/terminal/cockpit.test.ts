import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { programInTerminal } from './program.ts';
import { openTmux, type TmuxTerminal } from './tmux.ts';

const ebbline = programInTerminal();

const VIRTUAL = ['drill', 'hairpin', '--source', 'virtual:skilled', '--seed', '1', '--reps', '1'];

describe('the picture as the driver wants it', () => {
  test('l stacks target and own trace, d lists the settings while the drill waits', async () => {
    const open = await ebbline(VIRTUAL);
    await open.waitFor('rep 1 of 1');
    await open.send('l');
    await open.waitFor((screen) => screen.match(/ 0 %└/g)?.length === 2);
    await open.send('d');
    const menu = await open.waitFor('The drill waits: d closes the list.');
    expect(menu).toContain('▶ layout     stacked, the target above');
    await open.send('Down', 'Space');
    await open.waitFor('▶ preview    2 s ahead');
    await open.send('?');
    await open.waitFor('─ help');
    await open.send('Escape');
    await open.waitFor((screen) => screen.includes('▶ preview') && !screen.includes('─ help'));
    await open.send('d');
    await open.waitFor('Brake when the count is over.');
  });

  test('a theme is asked for by name, and NO_COLOR wins', async () => {
    const light = await ebbline([...VIRTUAL, '--theme', 'light']);
    await light.waitFor('rep 1 of 1');
    expect(await light.colours()).toContain('\x1b[38;5;25m');
    await light.close();
    const none = await ebbline([...VIRTUAL, '--theme', 'light'], undefined, { NO_COLOR: '1' });
    await none.waitFor('rep 1 of 1');
    expect(await none.colours()).not.toContain('38;5;');
  });

  test('too small a terminal says so, and the drill goes on when it grows', async () => {
    const open = await ebbline(VIRTUAL, { cols: 60, rows: 20 });
    await open.waitFor('need 80x24, have 60x20');
    await open.resize(120, 36);
    await open.waitFor('rep 1 of 1');
  });
});

/** The terminal names itself, so a dumb one is said to the program alone. */
async function openDumb(args: readonly string[]): Promise<TmuxTerminal> {
  const dataDir = mkdtempSync(join(tmpdir(), 'ebbline-dumb-'));
  const main = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;
  const command = ['env', 'TERM=dumb', process.execPath, main, ...args, '--data-dir', dataDir];
  const terminal = await openTmux(command, { cols: 80, rows: 24 });
  onTestFinished(async () => {
    await terminal.close();
    rmSync(dataDir, { recursive: true, force: true });
  });
  return terminal;
}

describe('lines alone', () => {
  test('where TERM is dumb, with keys typed as lines', async () => {
    const open = await openDumb(VIRTUAL);
    await open.waitFor('Type ? and Enter for the keys.');
    await open.waitFor(/^3$/m);
    await open.send('p', 'Enter');
    await open.waitFor('Paused. Press p');
    await open.send('p', 'Enter');
    await open.waitFor(/^Brake\.$/m);
    const rep = await open.waitFor(/^rep 1, shown, score \d+, release \d+, /m);
    expect(rep).not.toContain('\x1b');
    await open.waitFor('Enter starts the next block, q finishes.');
    expect(await open.flags()).toMatchObject({ alternate: false, cursorShown: true });
    await open.send('q', 'Enter');
    expect(await open.exitCode()).toBe(0);
    expect(await open.colours()).not.toContain('38;5;');
  });

  test('a corner is chosen by its number, and Ctrl-C ends it', async () => {
    const open = await ebbline(['drill', '--plain', '--source', 'virtual']);
    await open.waitFor('Type a number and Enter');
    await open.send('0', 'Enter');
    await open.waitFor(/Type a number from 1 to \d+, or q\./);
    await open.send('2', 'Enter');
    await open.waitFor('Rep 1 of 10, shown. Foot off the brake.');
    await open.send('C-c');
    expect(await open.exitCode()).toBe(130);
  });
});

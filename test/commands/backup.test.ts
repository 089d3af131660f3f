import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { addAll, aRep } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { runCommand } from './run-command.ts';

test('backup copies the history, says so, and refuses a file that is there', () =>
  inFolder(async (folder) => {
    const history = openHistory(folder);
    addAll(history, [aRep()]);
    history.close();
    const out = join(folder, 'copy.sqlite');
    const argv = ['backup', '--data-dir', folder, '--out', out];
    expect(await runCommand(argv)).toMatchObject({ code: 0, stderr: '' });
    expect(existsSync(out)).toBe(true);
    const again = await runCommand(argv);
    expect(again.code).toBe(1);
    expect(again.stderr).toMatch(/there already/);
  }));

test('backup as JSON names the copy and what was copied', () =>
  inFolder(async (folder) => {
    const history = openHistory(folder);
    addAll(history, [aRep()]);
    history.close();
    const out = join(folder, 'copy.sqlite');
    const { stdout } = await runCommand([
      ...['backup', '--data-dir', folder, '--out', out],
      '--json',
    ]);
    expect(JSON.parse(stdout)).toEqual({
      file: out,
      history: expect.stringContaining(join(folder, 'history.')),
    });
    expect(existsSync(out)).toBe(true);
  }));

test('backup without a history or a file to write is refused, and makes nothing', () =>
  inFolder(async (folder) => {
    const out = join(folder, 'copy');
    const none = await runCommand(['backup', '--data-dir', folder, '--out', out]);
    expect([none.code, existsSync(out)]).toEqual([1, false]);
    expect((await runCommand(['backup', '--data-dir', folder])).code).toBe(2);
  }));

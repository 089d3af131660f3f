import { mkdir, mkdtemp, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { DisplayKeeper, displayFile, readDisplay } from '../../src/commands/display-file.ts';
import { PLAIN_DISPLAY } from '../../src/drill/display/display-settings.ts';

let dir = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'display-'));
});
afterEach(() => rm(dir, { recursive: true }));

const STACKED = { ...PLAIN_DISPLAY, layout: 'stacked' } as const;

test('what was kept last is there the next time, for that driver alone', async () => {
  const keeper = new DisplayKeeper(dir, 'Kim');
  keeper.keep({ ...PLAIN_DISPLAY, zoom: 4 });
  keeper.keep(STACKED);
  expect(await keeper.settled()).toBeNull();
  expect(await readDisplay(dir, 'Kim')).toEqual(STACKED);
  expect(await readDisplay(dir, 'kim')).toEqual(PLAIN_DISPLAY);
  expect(await readdir(join(dir, 'display'))).toHaveLength(1);
  expect((await stat(displayFile(dir, 'Kim'))).mode & 0o777).toBe(0o600);
});

test('names that a file system takes for one, or for a place elsewhere, have files of their own', () => {
  const names = ['Kim', 'kim', 'KIM', '../../rig', 'a/b', 'a:b', 'CON', '', '…', 'x'.repeat(60)];
  const files = names.map((name) => displayFile(dir, name));
  expect(new Set(files.map((file) => file.toLowerCase())).size).toBe(names.length);
  for (const file of files) {
    expect(dirname(file)).toBe(join(dir, 'display'));
    expect(basename(file)).toMatch(/^[a-z0-9-]{9,50}\.json$/);
  }
});

test('a damaged file is as none, and the next change mends it', async () => {
  await mkdir(join(dir, 'display'));
  await writeFile(displayFile(dir, 'Kim'), Buffer.from([0xff, 0x7b, 0x22, 0x00]));
  expect(await readDisplay(dir, 'Kim')).toEqual(PLAIN_DISPLAY);
  const keeper = new DisplayKeeper(dir, 'Kim');
  keeper.keep(STACKED);
  await keeper.settled();
  expect(await readDisplay(dir, 'Kim')).toEqual(STACKED);
});

test('a folder that cannot be written is told when all is over', async () => {
  await writeFile(join(dir, 'display'), 'in the way');
  const keeper = new DisplayKeeper(dir, 'Kim');
  keeper.keep(STACKED);
  expect((await keeper.settled())?.message).toMatch(/^it cannot be written/);
});

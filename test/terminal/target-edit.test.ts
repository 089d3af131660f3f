import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { programInTerminal } from './program.ts';

const ebbline = programInTerminal();
const BUNDLED = new URL('../../profiles/targets/', import.meta.url).pathname;
const HAIRPIN = readFileSync(join(BUNDLED, 'hairpin.yaml'), 'utf8');
const GIVEN_BACK = { cursorShown: true, alternate: false, mouse: false };

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-edit-'));
  file = join(folder, 'own.yaml');
  copyFileSync(join(BUNDLED, 'hairpin.yaml'), file);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const saved = () => readFileSync(file, 'utf8');

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('editing a target at $cols x $rows', (size) => {
  test('a point moves, the numbers follow, undo goes back, and saving keeps the comments', async () => {
    const open = await ebbline(['target', 'edit', file], size);
    await open.waitFor(/peak +85\.0 %/);
    await open.send('Down');
    await open.waitFor(/peak +84\.0 %/);
    await open.waitFor('not saved');
    await open.send('u');
    await open.waitFor(/peak +85\.0 %/);
    await open.send('r', 'Tab', 'Right', 'Right');
    await open.waitFor(/at +0\.500 s/);
    await open.send('s');
    await open.waitFor('Saved to');
    await open.send('q');
    expect(await open.exitCode()).toBe(0);
    expect(await open.flags()).toEqual(GIVEN_BACK);
    const lines = HAIRPIN.split('\n');
    expect(
      saved()
        .split('\n')
        .filter((line, i) => line !== lines[i]),
    ).toEqual(['peak_level: 0.84', 'hold_s: 0.26', '  duration_s: 1.68']);
    expect(existsSync(`${file}.autosave`)).toBe(false);
  });
});

test('the picture follows the size of the terminal', async () => {
  const open = await ebbline(['target', 'edit', file, '--car', 'gt', '--corner', 'kiln-hairpin']);
  await open.waitFor('grip by axle');
  await open.resize(120, 40);
  await open.waitFor((screen) => screen.split('\n')[39]?.includes('tab point') ?? false);
  await open.resize(60, 20);
  await open.waitFor('need 80x24');
  await open.resize(80, 24);
  await open.waitFor('tab point');
});

test('what is not saved is asked for once, and can be saved then', async () => {
  const open = await ebbline(['target', 'edit', file]);
  await open.waitFor('peak');
  await open.send('Down', 'q');
  await open.waitFor('s saves and quits');
  await open.send('s');
  expect(await open.exitCode()).toBe(0);
  expect(saved()).toContain('peak_level: 0.84');
});

test('a file that somebody changed meanwhile is not overwritten', async () => {
  const open = await ebbline(['target', 'edit', file]);
  await open.waitFor('peak');
  await open.send('Down');
  await open.waitFor('not saved');
  writeFileSync(file, `${HAIRPIN}# theirs\n`);
  await open.send('s');
  await open.waitFor('changed by somebody else');
  await open.send('y');
  await open.waitFor('Saved to');
  await open.send('q');
  expect(await open.exitCode()).toBe(0);
  expect(saved()).toBe(`${HAIRPIN}# theirs\n`);
  expect(readFileSync(join(folder, 'own-2.yaml'), 'utf8')).toContain('peak_level: 0.84');
});

test('SIGTERM gives the terminal back, keeps what was not saved, and the next run offers it', async () => {
  const first = await ebbline(['target', 'edit', file]);
  await first.waitFor('peak');
  await first.send('Down');
  await first.waitFor('not saved');
  first.signal('SIGTERM');
  expect(await first.exitCode()).toBe(143);
  expect(await first.flags()).toEqual(GIVEN_BACK);
  expect(saved()).toBe(HAIRPIN);
  expect(readFileSync(`${file}.autosave`, 'utf8')).toContain('peak_level: 0.84');
  await first.close();
  const second = await ebbline(['target', 'edit', file]);
  await second.waitFor('not saved last time');
  await second.send('y');
  await second.waitFor(/peak +84\.0 %/);
  await second.send('s');
  await second.waitFor('Saved to');
  await second.send('q');
  expect(await second.exitCode()).toBe(0);
  expect(saved()).toContain('peak_level: 0.84');
  expect(existsSync(`${file}.autosave`)).toBe(false);
});

test('Ctrl-C gives the terminal back and keeps what was not saved', async () => {
  const open = await ebbline(['target', 'edit', file]);
  await open.waitFor('peak');
  await open.send('Down');
  await open.waitFor('not saved');
  await open.send('C-c');
  expect(await open.exitCode()).toBe(130);
  expect(await open.flags()).toEqual(GIVEN_BACK);
  expect(readFileSync(`${file}.autosave`, 'utf8')).toContain('peak_level: 0.84');
});

test('a bundled target is copied under a name of its own, which is a sound target', async () => {
  const out = join(folder, 'copy.yaml');
  const before = readFileSync(join(BUNDLED, 'right-angle.yaml'), 'utf8');
  const open = await ebbline(['target', 'edit', 'right-angle', '--out', out]);
  await open.waitFor('new, not written');
  await open.send('Tab', 'Down', 's');
  await open.waitFor('Saved to');
  await open.send('q');
  expect(await open.exitCode()).toBe(0);
  expect(readFileSync(join(BUNDLED, 'right-angle.yaml'), 'utf8')).toBe(before);
  const check = await ebbline(['target', 'check', out]);
  await check.waitFor('copy.yaml: ok');
});

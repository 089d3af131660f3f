import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { freeName, writeOver } from '../../src/commands/edited-file.ts';
import { keepChanges, keptName, readKept } from '../../src/commands/kept-changes.ts';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-edited-'));
  file = join(folder, 'a.yaml');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('a file that holds what is known is replaced, with its mode, and nothing else is left', async () => {
  writeFileSync(file, 'one');
  chmodSync(file, 0o640);
  expect(await writeOver(file, 'two', 'one')).toBe('written');
  expect(readFileSync(file, 'utf8')).toBe('two');
  expect(statSync(file).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder)).toEqual(['a.yaml']);
});

test('a file that changed, or came meanwhile, is left', async () => {
  writeFileSync(file, 'theirs');
  expect(await writeOver(file, 'two', 'one')).toBe('changed');
  expect(await writeOver(file, 'two', null)).toBe('changed');
  expect(readFileSync(file, 'utf8')).toBe('theirs');
  expect(readdirSync(folder)).toEqual(['a.yaml']);
});

test('a file that is gone, or was never there, is made with its folder', async () => {
  expect(await writeOver(file, 'two', 'one')).toBe('written');
  const deep = join(folder, 'b', 'c.yaml');
  expect(await writeOver(deep, 'three', null)).toBe('written');
  expect([readFileSync(file, 'utf8'), readFileSync(deep, 'utf8')]).toEqual(['two', 'three']);
});

test('behind a link the file is changed and the link stays', async () => {
  writeFileSync(file, 'one');
  const link = join(folder, 'link.yaml');
  symlinkSync(file, link);
  await writeOver(link, 'two', 'one');
  expect(readFileSync(file, 'utf8')).toBe('two');
  expect(readFileSync(link, 'utf8')).toBe('two');
});

test('the first free name', async () => {
  writeFileSync(join(folder, 'a-2.yaml'), '');
  expect(await freeName(file)).toBe(join(folder, 'a-3.yaml'));
});

test('changes are kept beside the file, and gone when there is nothing to keep', async () => {
  const kept = keepChanges(file);
  kept.later('changed');
  await kept.now();
  expect(await readKept(file)).toEqual({ text: 'changed', fileIsNewer: false });
  kept.later(null);
  await kept.now();
  expect(await readKept(file)).toBeNull();
  expect(readdirSync(folder)).toEqual([]);
});

test('what an earlier run left is dropped by a run that keeps nothing', async () => {
  writeFileSync(keptName(file), 'old');
  const kept = keepChanges(file);
  kept.later(null);
  await kept.now();
  expect(await readKept(file)).toBeNull();
});

test('a folder that cannot be written keeps nothing and throws nothing', async () => {
  const kept = keepChanges(join(file, 'below-a-file.yaml'));
  writeFileSync(file, '');
  kept.later('changed');
  await kept.now();
  expect(await readKept(join(file, 'below-a-file.yaml'))).toBeNull();
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const dataDir = mkdtempSync(join(tmpdir(), 'driver-option-'));
afterAll(() => rmSync(dataDir, { recursive: true }));
beforeAll(async () => {
  const note = ['note', 'add', 'ease over the drain', '--corner', 'kiln-hairpin'];
  const { code } = await runCommand([...note, '--driver', 'Kim', '--data-dir', dataDir]);
  expect(code).toBe(0);
});

const LISTS = [
  ['note', 'list'],
  ['brief', 'kiln-hairpin', '--car', 'gt'],
  ['report', 'last', '--json'],
  ['report', '--weeks', '3', '--json'],
  ['rescore', '--score-version', '1'],
];
const NAMED = [
  ...LISTS,
  ['target', 'learn', '--reps', 'hairpin'],
  ['trace', 'compare', 'friday', '--zone', '1,2,3', '--target', 'hairpin', '--full-scale', '80'],
  ['progress'],
  ['export', '--out', join(dataDir, 'no.zip')],
  ['import', join(dataDir, 'no.zip')],
  ['note', 'add', 'x', '--corner', 'kiln-hairpin'],
  ['drill', 'hairpin', '--headless', '--source', 'virtual'],
];
const driven = (call: readonly string[], driver: string) =>
  runCommand([...call, '--driver', driver, '--data-dir', dataDir]);

describe.each(NAMED.map((call) => [call] as const))('%j --driver', (call) => {
  test.each([
    ['is empty', ''],
    ['is empty', '  '],
    ['is longer than 60 characters', 'K'.repeat(61)],
    ['has characters that cannot be printed', 'Kim\u001b[31m'],
  ])('that %s is one problem', async (wrong, name) => {
    const { code, stdout, stderr } = await driven(call, name);
    expect(stderr).toContain(`--driver: the name after --driver ${wrong}\n`);
    expect(stderr.trim().split('\n')).toHaveLength(2);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  });
});

describe.each(LISTS.map((call) => [call] as const))('%j --driver', (call) => {
  test('of whom nothing is kept is one problem, with whom was meant', async () => {
    const { code, stdout, stderr } = await driven(call, 'Kimm');
    expect(stderr).toContain('there is nothing of driver "Kimm"\n');
    expect(stderr).toContain('Did you mean Kim? There are reps or notes of: "Kim".');
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
  });
});

test('a driver with notes alone is known', async () => {
  expect((await driven(['note', 'list'], 'Kim')).stdout).toContain('ease over the drain');
  expect((await driven(['brief', 'kiln-hairpin', '--car', 'gt'], ' Kim ')).code).toBe(0);
});

test('nobody is refused where nothing was kept at all', async () => {
  const empty = join(dataDir, 'empty');
  const { code } = await runCommand(['note', 'list', '--driver', 'Kim', '--data-dir', empty]);
  expect(code).toBe(0);
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

let dataDir = '';
beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'ebbline-completion-'));
  mkdirSync(join(dataDir, 'cars'));
});
afterEach(() => rmSync(dataDir, { recursive: true, force: true }));

const reply = async (...words: string[]): Promise<string> =>
  (await runCommand(['--data-dir', dataDir, 'completion', 'reply', '--', ...words])).stdout;

describe('completion', () => {
  test.each(['bash', 'zsh', 'fish'])('prints a script for %s', async (shell) => {
    const { code, stdout } = await runCommand(['completion', shell]);
    expect(code).toBe(0);
    expect(stdout).toContain('completion reply --');
    expect(stdout).not.toContain('\\$');
  });

  test('of another shell is wrong usage', async () => {
    const { code, stderr } = await runCommand(['completion', 'tcsh']);
    expect(code).toBe(2);
    expect(stderr).toContain('bash, zsh, fish');
  });

  test("names what comes along and what is the user's own", async () => {
    writeFileSync(join(dataDir, 'cars', 'proto-of-mine.yaml'), '');
    expect(await reply('car', 'show', 'proto')).toBe('proto-of-mine\nprototype\n');
  });

  test('knows the topics of help, its commands, and those that answer in JSON', async () => {
    const replied = async (...words: string[]): Promise<string[]> =>
      (await reply('help', ...words)).split('\n').map((line) => line.split('\t')[0] ?? '');
    expect(await replied('')).toEqual(expect.arrayContaining(['cautions', 'json', 'rig', 'drill']));
    expect(await replied('json', 're')).toEqual(['report', 'rescore', '']);
    // `rig setup` prints no answer.
    expect(await replied('json', 'rig', '')).toEqual(['list', 'check', 'decode', '']);
    expect(await replied('rig', 's')).toEqual(['setup', '']);
  });

  test('leaves out names that a shell would read otherwise', async () => {
    for (const name of ['$(touch x).yaml', 'a b.yaml', 'a\u001b[31m.yaml', '-rf.yaml'])
      writeFileSync(join(dataDir, 'cars', name), '');
    expect(await reply('car', 'show', '')).toMatch(/^gt$/m);
    expect(await reply('car', 'show', '')).not.toMatch(/touch|a b|31m|rf/);
  });
});

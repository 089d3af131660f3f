import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const ROOT = new URL('../..', import.meta.url).pathname;
const PACKAGE = 'node_modules/better-sqlite3';
/** There the SQLite of Node comes first. */
const hasOwn = Number(process.versions.node.split('.')[0]) >= 22;

const root = temporaryFolder('better-sqlite-package');

/** Why the built program cannot read a history where the package beside it is a stand-in of that version. */
function whyNot(version: string): string {
  const folder = mkdtempSync(join(root, 'test-'));
  const put = (path: string, text: string): void => writeFileSync(join(folder, path), text);
  for (const part of ['dist/bin', 'package.json'])
    cpSync(join(ROOT, part), join(folder, part), { recursive: true });
  mkdirSync(join(folder, PACKAGE), { recursive: true });
  put(`${PACKAGE}/package.json`, JSON.stringify({ name: 'better-sqlite3', version }));
  put(`${PACKAGE}/index.js`, "throw new Error('stand-in of other JavaScript')");
  put('history.sqlite', '');
  const program = join(folder, 'dist/bin/ebbline.js');
  const env = { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1' };
  return spawnSync(process.execPath, [program, 'progress', '--data-dir', folder], {
    env,
    encoding: 'utf8',
  }).stderr;
}

describe.skipIf(hasOwn)('the built program, with better-sqlite3 installed', () => {
  const { version } = JSON.parse(readFileSync(join(ROOT, PACKAGE, 'package.json'), 'utf8'));

  test('loads no more than the native part of the version it was built with', () => {
    expect(whyNot(version)).toContain('better-sqlite3/build/Release/better_sqlite3.node');
  });

  test('leaves another version its own JavaScript', () => {
    expect(whyNot('12.99.0')).toContain('(stand-in of other JavaScript)');
  });
});

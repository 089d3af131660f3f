import { spawnSync } from 'node:child_process';
import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import module from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, test } from 'vitest';
import { cacheFolder } from '../src/kept-code.ts';
import { temporaryFolder } from './temporary-folder.ts';

const KEPT_CODE = new URL('../dist/kept-code.js', import.meta.url).href;
const PROGRAM = fileURLToPath(new URL('../dist/bin/ebbline.js', import.meta.url));
/** From Node 22 on, Node keeps the code itself. */
const isNodes = 'enableCompileCache' in module;

const root = temporaryFolder('kept-code');
let folder = '';
let own = '';
beforeEach(() => {
  folder = mkdtempSync(join(root, 'test-'));
  own = join(folder, 'own.cjs');
});

function node(args: readonly string[], env: Record<string, string> = {}): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    encoding: 'utf8',
    env: { ...process.env, XDG_CACHE_HOME: folder, ...env },
  });
  return status === 0 ? stdout : `${status}: ${stderr}`;
}

/** Loads the module at `own` with its code kept, and prints what it exports. */
function load(env: Record<string, string> = {}): string {
  const script = `
    import { createRequire } from 'node:module';
    import { keepCompiledCode } from '${KEPT_CODE}';
    keepCompiledCode(['test']);
    console.log(await createRequire('file:///')(${JSON.stringify(own)}));`;
  return node(['--input-type=module', '--eval', script], env).trim();
}

const kept = (): string[] => {
  try {
    return readdirSync(join(folder, 'ebbline')).map((name) => join(folder, 'ebbline', name));
  } catch {
    return [];
  }
};

describe.skipIf(isNodes)('compiled code', () => {
  test('is kept by the first run and left alone by the next', () => {
    const first = node([PROGRAM, 'target', 'list']);
    expect(first).toContain('hairpin');
    const [file, ...others] = kept();
    expect(others).toEqual([]);
    const before = statSync(file!);
    expect(before.size).toBeGreaterThan(100_000);
    expect(node([PROGRAM, 'target', 'list'])).toBe(first);
    expect(statSync(file!).mtimeMs).toBe(before.mtimeMs);
  });

  test('takes in what later runs needed once it is an hour old, and not before', () => {
    const more = `${Array.from({ length: 200 }, (_, i) => `process.argv[${i}]?.length`).join(' + ')}`;
    writeFileSync(
      own,
      `const more = () => ${more}; module.exports = process.env.MORE ? more() : 0;`,
    );
    load();
    const [file] = kept();
    const before = statSync(file!);
    load({ MORE: '1' });
    expect(statSync(file!)).toMatchObject({ size: before.size, mtimeMs: before.mtimeMs });
    const hourAgo = Date.now() / 1000 - 3700;
    utimesSync(file!, hourAgo, hourAgo);
    load();
    expect(statSync(file!).size).toBe(before.size);
    utimesSync(file!, hourAgo, hourAgo);
    load({ MORE: '1' });
    expect(statSync(file!).size).toBeGreaterThan(before.size + 2000);
  });

  test('is not given up for less: a long run throws away what it does not need again', () => {
    const more = Array.from({ length: 200 }, (_, i) => `process.argv[${i}]?.length`).join(' + ');
    // the engine forgets what was called once when its memory has been swept a few times since
    const long = `for (let i = 0; i < 12; i++) {
      const held = [];
      for (let k = 0; k < 4000; k++) held[k % 800] = new Array(1000).fill(k);
    }`;
    writeFileSync(
      own,
      `const more = () => ${more}; more(); if (process.env.LONG) ${long} module.exports = 0;`,
    );
    const little = { NODE_OPTIONS: '--max-old-space-size=24' };
    load(little);
    const [file] = kept();
    const before = statSync(file!).size;
    const hourAgo = Date.now() / 1000 - 3700;
    utimesSync(file!, hourAgo, hourAgo);
    load({ ...little, LONG: '1' });
    expect(statSync(file!).mtimeMs).toBeGreaterThan(hourAgo * 1000 + 60_000);
    expect(statSync(file!).size).toBeGreaterThanOrEqual(before);
  });

  test('that is damaged or cut short is made again', () => {
    const first = node([PROGRAM, 'target', 'list']);
    const [file] = kept();
    const good = readFileSync(file!);
    for (let part = 0; part < 8; part++) {
      const at = Math.floor((good.length * (part + 0.5)) / 8);
      const damaged = Buffer.from(good);
      damaged.fill(0, at, at + 4096);
      writeFileSync(file!, part % 2 === 0 ? damaged : good.subarray(0, at));
      expect(node([PROGRAM, 'target', 'list'])).toBe(first);
    }
    expect(readFileSync(file!).length).toBeGreaterThan(good.length / 2);
  });

  test('of a module that was changed is not used, were it of the same length', () => {
    writeFileSync(own, 'module.exports = (() => "before")();');
    expect(load()).toBe('before');
    expect(load()).toBe('before');
    writeFileSync(own, 'module.exports = (() => "behind")();');
    expect(load()).toBe('behind');
  });

  test('does without a module that has to import another later', () => {
    writeFileSync(own, 'module.exports = import("node:path").then(({ sep }) => sep.length);');
    expect(load()).toBe('1');
    expect(load()).toBe('1');
  });

  test('is not kept by a run that fails, nor where that is switched off', () => {
    writeFileSync(own, 'module.exports = 1; process.exitCode = 1;');
    load();
    writeFileSync(own, 'module.exports = 2;');
    expect(load({ NODE_DISABLE_COMPILE_CACHE: '1' })).toBe('2');
    expect(kept()).toEqual([]);
    expect(load()).toBe('2');
    expect(kept()).toHaveLength(1);
  });

  test('needs no folder that can be written', () => {
    writeFileSync(own, 'module.exports = 3;');
    expect(load({ XDG_CACHE_HOME: join(own, 'below-a-file') })).toBe('3');
  });
});

describe('the folder', () => {
  test.each([
    // XDG Base Directory 0.8: $XDG_CACHE_HOME, else ~/.cache; a relative path is to be ignored
    ['linux', { XDG_CACHE_HOME: '/cache' }, '/cache/ebbline'],
    ['linux', {}, '/home/me/.cache/ebbline'],
    ['linux', { XDG_CACHE_HOME: 'cache' }, '/home/me/.cache/ebbline'],
    ['darwin', {}, '/home/me/Library/Caches/ebbline'],
    ['win32', { LOCALAPPDATA: '/local' }, '/local/ebbline/cache'],
  ] as const)('on %s with %j is %s', (platform, env, expected) => {
    expect(cacheFolder(platform, env, '/home/me')).toBe(expected);
  });

  test('is not there for a user without a home', () => {
    expect(cacheFolder('linux', {}, null)).toBeNull();
    expect(cacheFolder('linux', { XDG_CACHE_HOME: '/cache' }, null)).toBe('/cache/ebbline');
  });
});

import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const ROOT = new URL('../..', import.meta.url).pathname;

let folder = '';
/** A folder with a space in its name, far from the program. */
let elsewhere = '';

/** Packs the built program and installs the archive as `npm install -g` does, into a folder of its own. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-install-'));
  elsewhere = join(folder, 'some where');
  mkdirSync(elsewhere);
  const npm = (cwd: string, ...args: string[]): string =>
    execFileSync('npm', args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  npm(ROOT, 'pack', '--ignore-scripts', '--pack-destination', folder);
  const archive = readdirSync(folder).find((name) => name.endsWith('.tgz'))!;
  // Without their scripts the packages that are compiled do not load: that is how it has to work, too.
  const quick = ['--ignore-scripts', '--no-audit', '--no-fund', '--prefer-offline'];
  npm(
    elsewhere,
    'install',
    '-g',
    '--prefix',
    join(folder, 'prefix'),
    ...quick,
    join(folder, archive),
  );
}, 180_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function ebbline(...args: string[]): { readonly code: number | null; readonly out: string } {
  const env = { PATH: process.env.PATH, HOME: join(folder, 'home'), LANG: 'C.UTF-8' };
  const program = join(folder, 'prefix', 'bin', 'ebbline');
  const { status, stdout, stderr } = spawnSync(program, args, {
    cwd: elsewhere,
    env,
    encoding: 'utf8',
  });
  return { code: status, out: `${stdout}${stderr}` };
}

test('the installed program runs from any folder and finds its profiles', () => {
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  expect(ebbline('--version')).toEqual({ code: 0, out: expect.stringContaining(version) });
  expect(ebbline('target', 'list')).toEqual({ code: 0, out: expect.stringContaining('hairpin') });
  expect(ebbline('corner', 'list').out).toContain('kiln-hairpin');
  expect(ebbline('car', 'list').out).toContain('prototype');
  expect(ebbline('plan', 'list').out).toContain('maintenance');
  expect(ebbline('target', 'derive', '--car', 'gt', '--corner', 'kiln-hairpin').code).toBe(0);
});

test('its schemas are where the profiles say, and check files', () => {
  const root = join(folder, 'prefix', 'lib', 'node_modules', 'ebbline');
  const hairpin = join(root, 'profiles', 'targets', 'hairpin.yaml');
  const schema = /\$schema=(\S+)/.exec(readFileSync(hairpin, 'utf8'))?.[1] ?? 'none';
  expect(existsSync(join(root, 'profiles', 'targets', schema))).toBe(true);
  expect(ebbline('target', 'check', hairpin).code).toBe(0);
});

test('it drills and keeps reps without any package that is compiled', () => {
  const drill = ['drill', 'hairpin', '--source', 'virtual:club', '--headless', '--seed', '1'];
  const { code, out } = ebbline(...drill, '--reps', '2');
  expect(out).toMatch(/rep +2 +shown +score +\d+/);
  expect(code).toBe(0);
  expect(ebbline('progress', 'hairpin', '--json').code).toBe(0);
});

test('it names the licences of what came along', () => {
  expect(ebbline('help', 'licences').out).toMatch(/^rxjs +\d\S+ +Apache-2\.0$/m);
});

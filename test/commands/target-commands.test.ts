import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CommandInput } from '../../src/commands/command.ts';
import { readProfileText } from '../../src/commands/profile-files.ts';
import { command as check } from '../../src/commands/target-check.ts';
import { findTarget, listTargets } from '../../src/commands/target-files.ts';
import { command as list } from '../../src/commands/target-list.ts';
import { command as show } from '../../src/commands/target-show.ts';
import { Problem } from '../../src/problem.ts';
import { fakeContext } from './fake-context.ts';

const GOOD =
  'name: My corner\ncorner_type: mine\ndomain: time\npeak_level: 0.6\nrise: { duration_s: 0.25 }\nrelease: { duration_s: 1.5, shape: linear }\n';
const BAD = GOOD.replace('0.6', '1.6').replace('duration_s: 1.5', 'duration: 1.5');
const QUICK = GOOD.replace('1.5', '0.2');

let dir = '';
const file = (name: string): string => join(dir, name);
const input = (positionals: string[], values: CommandInput['values'] = {}): CommandInput => ({
  positionals,
  values,
});

async function problemOf(promise: Promise<unknown>): Promise<Problem> {
  const error = await promise.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(Problem);
  return error as Problem;
}

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'target-commands-'));
  mkdirSync(file('data/targets'), { recursive: true });
  mkdirSync(file('folder.yaml'));
  writeFileSync(file('data/targets/mine.yaml'), GOOD);
  writeFileSync(file('data/targets/hairpin.yml'), GOOD);
  writeFileSync(file('data/targets/notes.txt'), 'not a target');
  writeFileSync(file('good.yaml'), `\ufeff${GOOD}`);
  writeFileSync(file('bad.yaml'), BAD);
  writeFileSync(file('quick.yaml'), QUICK);
  writeFileSync(file('latin.yaml'), Buffer.from(`# \xe9\n${GOOD}`, 'latin1'));
  writeFileSync(file('huge.yaml'), '#'.repeat(300_000));
});
afterAll(() => rmSync(dir, { recursive: true }));

describe('finding a target', () => {
  test('by the id of a bundled one, without any data folder', async () => {
    expect(await findTarget('double-apex', file('nowhere'))).toMatchObject({ id: 'double-apex' });
  });

  test('by an own id; an own target hides a bundled one of the same id', async () => {
    expect(await findTarget('mine', file('data'))).toMatchObject({ name: 'My corner' });
    expect(await findTarget('hairpin', file('data'))).toMatchObject({ name: 'My corner' });
    expect(await findTarget('hairpin', file('nowhere'))).not.toMatchObject({ name: 'My corner' });
  });

  test('by path, with or without a byte order mark', async () => {
    expect(await findTarget(file('good.yaml'), file('data'))).toMatchObject({ id: 'good' });
  });

  test('an unknown id names the nearest', async () => {
    const problem = await problemOf(findTarget('harpin', file('nowhere')));
    expect(problem.message).toBe('there is no target "harpin"');
    expect(problem.next).toMatch(/^Did you mean hairpin\? Known are .*right-angle/);
  });

  test.each([
    ['missing.yaml', 'there is no such file'],
    ['folder.yaml', 'this is not a file'],
    ['latin.yaml', 'the file is not UTF-8 text'],
    ['huge.yaml', 'the file has 300000 bytes'],
  ])('%s: %s', async (name, message) => {
    const problem = await problemOf(readProfileText(file(name), 'target'));
    expect(problem).toMatchObject({ message, where: file(name) });
  });

  test('a file that is no target tells all that is wrong', async () => {
    const problem = await problemOf(findTarget(file('bad.yaml'), file('data')));
    expect(problem.message).toMatch(/^3 problems\n.*bad\.yaml:4:13: peak_level is 1\.6\./);
  });
});

describe('target list', () => {
  test('own targets first, then the bundled ones they do not hide', async () => {
    const context = fakeContext(file('data'));
    expect(await list.run(input([]), context)).toBe(0);
    const lines = context.printed().trimEnd().split('\n');
    expect(lines[0]).toMatch(/^id +name +corner +peak +release +from$/);
    expect(lines[1]).toMatch(/^hairpin +My corner +mine +60 % +1\.5 s +own$/);
    expect(lines.filter((line) => line.startsWith('hairpin'))).toHaveLength(1);
    expect(lines.length - 1).toBe((await listTargets(file('data'))).length);
    expect(context.warned()).toBe('');
  });

  test('as JSON', async () => {
    const context = fakeContext(file('nowhere'));
    await list.run(input([], { json: true }), context);
    const { targets } = JSON.parse(context.printed()) as { targets: Record<string, unknown>[] };
    expect(targets.find(({ id }) => id === 'fast-sweeper')).toMatchObject({
      corner_type: 'fast-sweeper',
      domain: 'time',
      peak_level: 0.95,
      release_s: 1.1,
      origin: 'bundled',
    });
  });

  test('a broken own file is named and keeps nothing else from being listed', async () => {
    mkdirSync(file('broken/targets'), { recursive: true });
    writeFileSync(file('broken/targets/bad.yaml'), BAD);
    const context = fakeContext(file('broken'));
    expect(await list.run(input([]), context)).toBe(0);
    expect(context.warned()).toContain('bad.yaml: 3 problems, see `ebbline target check ');
    expect(context.printed()).toContain('double-apex');
  });

  test('an argument is a usage error', async () => {
    const problem = await problemOf(list.run(input(['hairpin']), fakeContext(dir)));
    expect(problem.exitCode).toBe(2);
  });
});

describe('target show', () => {
  test('draws within 80 columns and names the numbers', async () => {
    const context = fakeContext(file('nowhere'), { env: { LANG: 'C.UTF-8' } });
    expect(await show.run(input(['right-angle']), context)).toBe(0);
    const lines = context.printed().split('\n');
    for (const line of lines) expect([...line].length).toBeLessThanOrEqual(80);
    expect(lines[0]).toBe("Weaver's corner, right-angle");
    expect(context.printed()).toMatch(/[\u2801-\u28ff]/);
    expect(context.printed()).toContain('95R');
    expect(context.printed()).toContain('start of release');
    expect(context.printed()).toContain('185 km/h to 92 km/h');
  });

  test('steering is drawn up to the left and down to the right', async () => {
    const filled = async (target: string): Promise<string[]> => {
      const context = fakeContext(file('nowhere'));
      await show.run(input([target]), context);
      const lines = context.printed().split('\n');
      const start = lines.findIndex((line) => line.startsWith('steering'));
      return lines.slice(start + 1, start + 5);
    };
    const count = (line: string | undefined): number => (line ?? '').split('#').length;
    const left = await filled('hairpin');
    expect(count(left[3])).toBeGreaterThan(count(left[0]));
    expect(left[0]).toContain('150L');
    const right = await filled('right-angle');
    expect(count(right[0])).toBeGreaterThan(count(right[3]));
    expect(right[3]).toContain('95R');
  });

  test('is plain ASCII where the locale is not UTF-8', async () => {
    const context = fakeContext(file('nowhere'), { env: { LANG: 'C' } });
    await show.run(input(['hairpin']), context);
    expect(context.printed()).toMatch(/^[\x20-\x7e\n]*$/);
    expect(context.printed()).toContain('150 deg left');
  });

  test('in imperial units', async () => {
    const context = fakeContext(file('nowhere'), { units: 'imperial' });
    await show.run(input(['right-angle']), context);
    expect(context.printed()).toContain('115 mph to 57 mph');
  });

  test('warns of what no foot can follow', async () => {
    const context = fakeContext(dir);
    await show.run(input([file('quick.yaml')]), context);
    expect(context.printed()).toMatch(/^Caution: A foot that follows 2 Hz/m);
  });

  test('as JSON', async () => {
    const context = fakeContext(file('nowhere'));
    await show.run(input(['hairpin'], { json: true }), context);
    const json = JSON.parse(context.printed()) as Record<string, unknown[]>;
    expect(json.level).toHaveLength(json.time_s!.length);
    expect(json.steering_deg).toHaveLength(json.time_s!.length);
  });

  test.each([[[]], [['hairpin', 'double-apex']]])('%j is a usage error', async (names) => {
    expect((await problemOf(show.run(input(names), fakeContext(dir)))).exitCode).toBe(2);
  });
});

describe('target check', () => {
  test('a sound file', async () => {
    const context = fakeContext(dir);
    expect(await check.run(input([file('good.yaml')]), context)).toBe(0);
    expect(context.printed()).toBe(`${file('good.yaml')}: ok\n`);
    expect(context.warned()).toBe('');
  });

  test('all files and all their problems, with exit code 1', async () => {
    const context = fakeContext(dir);
    const names = ['bad.yaml', 'missing.yaml', 'quick.yaml'].map(file);
    expect(await check.run(input(names), context)).toBe(1);
    const warned = context.warned();
    expect(warned).toContain(`${file('bad.yaml')}:4:13: peak_level is 1.6\n`);
    expect(warned).toContain(`${file('bad.yaml')}:6:12: duration has no unit\n`);
    expect(warned).toContain('there is no such file');
    expect(warned).toContain(`${file('quick.yaml')}: A foot that follows 2 Hz`);
    expect(context.printed()).toBe(`${file('quick.yaml')}: ok\n`);
  });

  test('as JSON', async () => {
    const context = fakeContext(dir);
    const names = [file('bad.yaml'), file('good.yaml')];
    expect(await check.run(input(names, { json: true }), context)).toBe(1);
    const { files } = JSON.parse(context.printed()) as { files: Record<string, unknown>[] };
    expect(files.map(({ ok }) => ok)).toEqual([false, true]);
    expect(files[0]?.problems).toContainEqual({
      line: 4,
      column: 13,
      what: 'peak_level is 1.6',
      next: 'Use a number from 0.1 to 1 (level of the peak).',
    });
  });

  test('no file is a usage error', async () => {
    expect((await problemOf(check.run(input([]), fakeContext(dir)))).exitCode).toBe(2);
  });
});

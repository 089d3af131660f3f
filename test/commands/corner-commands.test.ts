import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findCorner } from '../../src/commands/corner-files.ts';
import { type Ran, runCommand } from './run-command.ts';

let dir = '';
const file = (name: string): string => join(dir, name);
const corner = (...argv: string[]): Promise<Ran> =>
  runCommand(['corner', ...argv, '--data-dir', file('data')], { LANG: 'C.UTF-8' });
const FIVE = [
  ...['--approach-kmh', '190', '--slowest-kmh', '90', '--zone-m', '105'],
  ...['--turn-deg', '85', '--gear', '3'],
];

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'corner-commands-'));
  writeFileSync(file('bad.yaml'), 'name: Bad\nradius: 3\n');
});
afterAll(() => rmSync(dir, { recursive: true }));

describe('corner new', () => {
  test('writes a sheet that can then be named by id, and never over another', async () => {
    const made = await corner('new', "Miller's Pump corner", ...FIVE);
    expect(made).toMatchObject({ code: 0, stderr: '' });
    expect(made.stdout).toMatch(/goal mark +105 m before the slowest point, with a grip of 1.4/);
    expect(made.stdout).toMatch(/first-lap mark +\d+ m before it: what 10 % less grip would need/);
    expect(made.stdout).toMatch(/0\.05 less grip moves the brake point \d\.\d m back\./);
    const path = file('data/corners/millers-pump-corner.yaml');
    const text = readFileSync(path, 'utf8');
    expect(await findCorner('millers-pump-corner', file('data'))).toMatchObject({
      name: "Miller's Pump corner",
    });

    const again = await corner('new', "Miller's Pump corner", ...FIVE, '--grip', '1.5');
    expect(again.code).toBe(1);
    expect(again.stderr).toContain('the file is there already and was left as it is');
    expect(readFileSync(path, 'utf8')).toBe(text);
    expect((await corner('check', path)).stdout).toBe(`${path}: ok\n`);
  });

  test('as JSON, to a path', async () => {
    const made = await corner('new', file('out.yaml'), ...FIVE, '--direction', 'right', '--json');
    expect(JSON.parse(made.stdout)).toMatchObject({
      file: file('out.yaml'),
      id: 'out',
      grip: 1.4,
      goal_mark_m: expect.closeTo(105, 0),
    });
    expect((await findCorner(file('out.yaml'), dir)).line.sign).toBe(-1);
  });

  test('under its name, in a file elsewhere', async () => {
    const made = await corner('new', 'Pump corner', ...FIVE, '--out', file('pump.yaml'));
    expect(made.stdout).toContain(`written: ${file('pump.yaml')}\n`);
    expect(await findCorner(file('pump.yaml'), dir)).toMatchObject({ name: 'Pump corner' });
  });

  test('says so where the zone is longer than the corner can fill', async () => {
    const { code, stderr } = await corner('new', 'Long zone', ...FIVE, '--zone-m', '400');
    expect(code).toBe(0);
    expect(stderr).toMatch(/^The corner needs \d+ m less than --zone-m says/);
  });

  test.each([
    [['new', ...FIVE], 'no name given'],
    [['new', '---', ...FIVE], 'corner new'],
    [['new', 'x', ...FIVE.slice(2)], '--approach-kmh is missing'],
    [['new', 'x', ...FIVE, '--grip', 'much'], '--grip is "much"'],
    [['new', 'x', ...FIVE, '--direction', 'up'], '--direction is "up"'],
    [['new', 'x', ...FIVE, '--gear', '2.5'], '--gear is 2.5'],
    [['new', 'x', ...FIVE, '--zone-m', '40'], 'a zone of 40 m is too short'],
  ])('%j is a usage error', async (argv, message) => {
    const ran = await corner(...argv);
    expect(ran.code).toBe(2);
    expect(ran.stderr).toContain(message);
  });
});

describe('corner show', () => {
  const HEADS = /^ +before apex +radius +slope +bank$/m;

  test('draws every bundled corner within 80 columns, with its places', async () => {
    const { corners } = JSON.parse((await corner('list', '--json')).stdout) as {
      corners: { id: string }[];
    };
    expect(corners.length).toBeGreaterThanOrEqual(12);
    for (const { id } of corners) {
      const { code, stdout } = await corner('show', id);
      expect(code).toBe(0);
      for (const line of stdout.split('\n')) expect([...line].length, id).toBeLessThanOrEqual(80);
      expect(stdout).toMatch(/[\u2801-\u28ff]/);
      expect(stdout).toMatch(HEADS);
    }
  });

  test('a left-hander goes up, a right-hander down', async () => {
    const rows = async (id: string): Promise<readonly string[]> =>
      (await corner('show', id)).stdout.split('\n\n')[1]!.split('\n');
    const rowOf = (lines: readonly string[], letter: string): number =>
      lines.findIndex((line) => line.includes(letter));
    const left = await rows('kiln-hairpin');
    expect(rowOf(left, 'S')).toBeLessThan(rowOf(left, 'T'));
    const right = await rows('weavers-corner');
    expect(rowOf(right, 'S')).toBeGreaterThan(rowOf(right, 'T'));
  });

  test('names the places and what a variant changes', async () => {
    const { stdout } = await corner('show', 'kiln-hairpin', '--variant', 'wet');
    expect(stdout).toMatch(/^o {2}bump of 5.0 m, 25 % of load +112.0 m +- +0 % +0 %$/m);
    expect(stdout).toMatch(/^T {2}turn-in +46.0 m +- +0 % +0 %$/m);
    expect(stdout).toMatch(/^S {2}apex, slowest by its radius +0.0 m +18.0 m +0 % +0 %$/m);
    expect(stdout).toMatch(/^car +grip times 0.65, balance bar 55 % front$/m);
    expect(stdout).toMatch(/^approach +225 km\/h on 320.0 m$/m);
  });

  test('with a car, its target has its places in it', async () => {
    const argv = ['show', 'kiln-hairpin', '--car', 'gt'];
    const { stdout } = await corner(...argv);
    expect(stdout).toMatch(/^b {2}brake point +\d+\.\d m/m);
    expect(stdout).toMatch(/^r {2}start of release +\d+\.\d m/m);
    expect(stdout).toMatch(/^d {2}downshift, 3 to 2 +\d+\.\d m/m);
    expect(stdout).toMatch(/of the Marlgate GT, slowest at the\napex/);
    const derived = JSON.parse(
      (await runCommand(['target', 'derive', '--car', 'gt', '--corner', 'kiln-hairpin', '--json']))
        .stdout,
    );
    const { places } = JSON.parse((await corner(...argv, '--json')).stdout);
    const placed = places.find(({ name }: { name: string }) => name === 'brake point');
    const { brake_point: braked, apex } = derived.key_points;
    expect(placed.before_apex_m).toBeCloseTo(braked.distance_m - apex.distance_m, 1);
    for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  });

  test('two apexes of a chicane, one each way', async () => {
    const { stdout } = await corner('show', 'ferry-chicane', '--variant', 'race');
    expect(stdout).toMatch(/^A {2}apex +-\d+\.\d m +34.0 m/m);
    expect(stdout).toMatch(/^turn +52° left, then 50° right$/m);
  });

  test('in imperial units, in plain ASCII', async () => {
    const argv = ['corner', 'show', 'quarry-drop', '--units', 'imperial'];
    const { stdout } = await runCommand([...argv, '--data-dir', dir], { LANG: 'C' });
    expect(stdout).toMatch(/^[\x20-\x7e\n]*$/);
    expect(stdout).toMatch(/^approach +130 mph on 853 ft$/m);
    expect(stdout).toMatch(/^ *118 ft L/m);
    expect(stdout).not.toMatch(/\d (m|kg)\b/);
    // 12 kg; a pound is 0.45359237 kg exactly
    expect(stdout).toMatch(/^car +fuel 26 lb$/m);
  });

  test('as JSON: the path over the distance to the apex', async () => {
    const { stdout } = await corner('show', 'twin-barrows', '--variant', 'race', '--json');
    const json = JSON.parse(stdout) as Record<string, number[]>;
    expect(json).toMatchObject({ id: 'twin-barrows', variant: 'race', line: 'double-apex' });
    for (const key of ['curvature_per_m', 'slope_percent', 'x_m', 'y_m', 'heading_deg'])
      expect(json[key]).toHaveLength(json.distance_m!.length);
    expect(json.distance_m![0]).toBe(json.apex_from_turn_in_m);
    expect(json.heading_deg!.at(-1)).toBeCloseTo(-140, 3);
  });

  test.each([
    [['show'], 'no corner named'],
    [['show', 'kiln-hairpin', 'ferry-chicane'], 'more than one corner named'],
    [['show', 'kiln-hairpin', '--variant', 'dry'], 'Kiln hairpin has no variant "dry"'],
  ])('%j is a usage error', async (argv, message) => {
    const ran = await corner(...argv);
    expect(ran.code).toBe(2);
    expect(ran.stderr).toContain(message);
  });
});

describe('corner list and check', () => {
  test('lists the circuit with directions, speeds and variants', async () => {
    const { code, stdout } = await corner('list');
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /^kiln-hairpin +Kiln hairpin +hairpin +165 left +245 km\/h +qualifying, race, wet, defending, damp, yellow +bundled$/m,
    );
  });

  test('as JSON', async () => {
    const { corners } = JSON.parse((await corner('list', '--json')).stdout) as {
      corners: Record<string, unknown>[];
    };
    expect(corners.find(({ id }) => id === 'ferry-chicane')).toMatchObject({
      line: 'chicane',
      direction: 'left',
      turn_deg: 52,
      origin: 'bundled',
    });
  });

  test('all problems of a file at once', async () => {
    const { code, stderr } = await corner('check', file('bad.yaml'));
    expect(code).toBe(1);
    expect(stderr).toContain(`${file('bad.yaml')}:2:1: unknown key radius`);
    expect(stderr).toContain('the file has no line');
  });

  test('an unknown id names the nearest', async () => {
    await expect(findCorner('kiln-harpin', dir)).rejects.toThrow(
      'there is no corner "kiln-harpin"',
    );
  });
});

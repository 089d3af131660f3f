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

describe('corner list and check', () => {
  test('lists the circuit with directions, speeds and variants', async () => {
    const { code, stdout } = await corner('list');
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /^kiln-hairpin +Kiln hairpin +hairpin +165 left +245 km\/h +qualifying, race, wet, defending +bundled$/m,
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

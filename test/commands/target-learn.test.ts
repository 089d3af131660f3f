import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { readTarget } from '../../src/target/read-target.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { shareAt, VARIED, variedLog } from '../trace/log/varied-log.ts';
import { runCommand } from './run-command.ts';

const folder = temporaryFolder('target-learn');

const ebbline = (...argv: string[]) => runCommand([...argv, '--data-dir', folder]);
const learn = (...argv: string[]) => ebbline('target', 'learn', ...argv);
const path = (name: string): string => join(folder, name);

/** Nothing on average over five laps. */
const TIMING = [0.06, -0.06, 0.03, -0.03, 0];

beforeAll(async () => {
  const log = variedLog({
    laps: 5,
    timingS: (lap) => TIMING[lap]!,
    rate: (lap) => 1 + TIMING[(lap + 2) % 5]!,
    amount: (lap) => 1 + TIMING[(lap + 1) % 5]! / 2,
  });
  writeFileSync(path('friday.csv'), log);
  await ebbline('trace', 'import', path('friday.csv'), '--steering-positive', 'left');
  await ebbline(
    ...[
      'drill',
      'hairpin',
      '--source',
      'virtual:club',
      '--headless',
      '--seed',
      '3',
      '--reps',
      '12',
    ],
  );
});

const ZONES = ['--trace', 'friday', '--zone', '1,3,5', '--zone', '7,9', '--full-scale', '80'];

describe('target learn from a log', () => {
  test('writes the curve the model drove, with where it comes from', async () => {
    const { code, stdout, stderr } = await learn(...ZONES, '--out', path('first.yaml'));
    expect({ code, stderr }).toEqual({
      code: 0,
      stderr: `Written to ${path('first.yaml')}; drill it with: ebbline drill --target ${path('first.yaml')}\n`,
    });
    expect(stdout).toContain('friday, learned: from 5 logged braking zones');
    expect(stdout).toMatch(/turn-in +\d\.\d\d s +0\.0\d\d s/);
    expect(stdout).toContain('Caution: 5 reps say little of the spread');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const text = readFileSync(path('first.yaml'), 'utf8');
    expect(text).toMatch(/^# yaml-language-server: \$schema=/);
    expect(text).toMatch(/zones: \[ ?1, 3, 5, 7, 9 ?\]/);
    const target = readTarget(text, 'first.yaml');
    expect(target.fullScale.pressureBar).toBe(80);
    for (let timeS = 0; timeS < 2.3; timeS += 0.01)
      expect(
        Math.abs(target.level.at(timeS) - (VARIED.peakBar / 80) * shareAt(timeS)),
        `${timeS}`,
      ).toBeLessThan(0.02);
    // a tenth of the angle after turn-in, drawn back to the middle
    expect(Math.abs(target.marks.turnIn! - 1.1)).toBeLessThan(0.15);
  });

  test('the file passes the check, is shown, and is drilled', async () => {
    await learn(...ZONES, '--out', path('drilled.yaml'));
    expect((await ebbline('target', 'check', path('drilled.yaml'))).code).toBe(0);
    const shown = await ebbline('target', 'show', path('drilled.yaml'));
    expect(shown.stdout).toMatch(/Learned from 5 zones of friday, \d{4}-\d\d-\d\d: what was done/);
    const drilled = await runCommand([
      ...['drill', '--target', path('drilled.yaml'), '--source', 'virtual:skilled'],
      ...['--headless', '--seed', '1', '--reps', '1', '--json'],
      ...['--data-dir', path('other')],
    ]);
    expect(drilled.code).toBe(0);
    expect(drilled.stdout).toMatch(/"score":[5-9]\d/);
  });

  test('never writes over a file', async () => {
    writeFileSync(path('mine.yaml'), 'mine');
    const { code, stderr } = await learn(...ZONES, '--out', path('mine.yaml'));
    expect(code).toBe(1);
    expect(stderr).toContain('the file is there already');
    expect(readFileSync(path('mine.yaml'), 'utf8')).toBe('mine');
  });

  test('as JSON it is the file and the curves', async () => {
    const { stdout } = await learn(...ZONES, '--json', '--name', 'Own', '--corner-type', 'hairpin');
    const json = JSON.parse(stdout);
    expect(json).toMatchObject({
      reps_count: 5,
      written_to: null,
      target_file: {
        name: 'Own',
        corner_type: 'hairpin',
        learned_from: { source: 'trace', name: 'friday', zones: [1, 3, 5, 7, 9] },
      },
    });
    expect(json.curves.mean_level).toHaveLength(json.curves.band_level.length);
  });

  test('warns of zones that may not be one corner', async () => {
    const entries = variedLog({
      laps: 3,
      timingS: () => 0,
      rate: () => 1,
      amount: () => 1,
      steering: false,
      entryMps: (lap) => 50 + 5 * lap,
    });
    writeFileSync(path('mixed.csv'), entries);
    await ebbline('trace', 'import', path('mixed.csv'));
    const { stdout } = await learn('--trace', 'mixed', '--zone', '1,3,5', '--full-scale', '80');
    expect(stdout).toMatch(/Entry speeds differ by \d+ %/);
    expect(stdout).toContain('The log has no steering, so turn-in is not known.');
  });

  test.each([
    [['--trace', 'friday'], 2, 'no --zone given'],
    [['--trace', 'friday', '--zone', '1,2'], 1, 'nobody says how much brake-front full scale is'],
    [['--trace', 'friday', '--zone', '1,3', '--full-scale', '80'], 1, '2 usable zones of 2'],
    [['--trace', 'friday', '--zone', '1,x', '--full-scale', '80'], 2, '"x" is no number of a zone'],
    [['--trace', 'friday', '--zone', '88', '--full-scale', '80'], 1, 'there is no zone 88'],
    [['--trace', 'fridai', '--zone', '1'], 1, 'Did you mean friday?'],
    [['--trace', 'friday', '--zone', '1,3,5', '--full-scale', '999'], 1, 'the peak is only'],
    [['--trace', 'friday', '--reps', 'hairpin'], 2, '--trace and --reps together'],
    [['--trace', 'friday', '--best', '4'], 2, '--best belongs to --reps'],
    [['--reps', 'hairpin', '--zone', '4'], 2, '--zone belongs to --trace'],
    [['--reps', 'hairpin', '--best', '2'], 2, 'a whole number from 3 to 200'],
    [['--reps', 'hairpim'], 1, 'Did you mean hairpin?'],
    [['--reps', 'hairpin', '--driver', 'nobody'], 1, 'there are no reps of driver "nobody"'],
    [[], 2, 'nothing to learn from'],
    [[], 2, 'or --reps ID for your own reps'],
    [[...ZONES, '--name', ''], 2, 'Give 1 to 40 plain characters'],
  ] as const)('refuses %j', async (argv, exitCode, said) => {
    const { code, stderr } = await learn(...argv);
    expect({ code, stderr }).toEqual({ code: exitCode, stderr: expect.stringContaining(said) });
  });
});

describe('target learn from own reps', () => {
  test('takes the best by score, and says what they were', async () => {
    const { code, stdout } = await learn('--reps', 'hairpin', '--best', '6', '--json');
    expect(code).toBe(0);
    const { learned_from: from, ...file } = JSON.parse(stdout).target_file;
    expect(from.reps).toHaveLength(6);
    expect(from.shown_reps + from.hidden_reps + from.first_of_day_reps).toBe(6);
    expect(file).toMatchObject({ name: 'Kiln hairpin, learned', corner_type: 'hairpin' });
    // the hairpin's own peak and turn-in
    expect(Math.abs(file.peak_level - 0.85)).toBeLessThan(0.08);
  });

  test('says so where nothing was ever driven', async () => {
    const { code, stderr } = await runCommand([
      ...['target', 'learn', '--reps', 'hairpin', '--data-dir', path('empty')],
    ]);
    expect(code).toBe(1);
    expect(stderr).toContain('there are no reps yet');
    expect(existsSync(path('empty'))).toBe(false);
  });
});

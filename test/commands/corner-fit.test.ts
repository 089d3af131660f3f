import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { csvOf, derivedOf } from '../corner/fit/logged-corner.ts';
import { drive, csvOf as plainCsv } from '../trace/log/driven-log.ts';
import { type Ran, runCommand } from './run-command.ts';

let dir = '';
const file = (name: string): string => join(dir, name);
const ebbline = (...argv: string[]): Promise<Ran> =>
  runCommand([...argv, '--data-dir', dir], { LANG: 'C.UTF-8' });
const fitted = (...argv: string[]): Promise<Ran> => ebbline('corner', 'fit', ...argv);

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'corner-fit-'));
  const hairpin = derivedOf('kiln-hairpin', 'gt');
  const sweep = derivedOf('quarry-drop', 'gt');
  const log = async (name: string, text: string): Promise<void> => {
    writeFileSync(file(`${name}.csv`), text);
    expect((await ebbline('trace', 'import', file(`${name}.csv`))).code).toBe(0);
  };
  await log('friday', csvOf([hairpin, derivedOf('weavers-corner', 'gt'), hairpin, sweep]));
  await log('bare', csvOf([hairpin], { channels: [] }));
  await log('straight', plainCsv(drive()));
  const rows = csvOf([hairpin], { channels: [] }).trimEnd().split('\n');
  await log('still', rows.map((row) => row.split(';').slice(0, 2).join(';')).join('\n'));
  await log('cut', rows.slice(0, rows.length - 380).join('\n'));
});
afterAll(() => rmSync(dir, { recursive: true }));

describe('corner fit', () => {
  test('writes a sheet that can be checked, shown, derived and drilled', async () => {
    const out = file('corners/hair.yaml');
    const made = await fitted('--trace', 'friday', '--zone', '1,3', '--car', 'gt', '--out', out);
    expect(made).toMatchObject({ code: 0, stderr: expect.stringContaining('Written to') });
    expect(made.stdout).toMatch(
      /^radius +1[78]\.\d m +(all |\d+\.\d to )\d+\.\d m, measured: yaw rate over speed$/m,
    );
    expect(made.stdout).toContain('The log could not say:\n- slope, bank and bumps');
    for (const line of made.stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(readFileSync(out, 'utf8')).toMatch(/^ {2}radius_m: 1[78](\.\d)? # measured$/m);
    expect((await ebbline('corner', 'check', out)).code).toBe(0);
    expect((await ebbline('corner', 'show', 'hair')).code).toBe(0);
    const derived = await ebbline('target', 'derive', '--car', 'gt', '--corner', 'hair', '--json');
    expect(derived.code).toBe(0);
    const drilled = ['drill', 'hair', '--source', 'virtual:club', '--headless', '--seed', '1'];
    expect((await ebbline(...drilled, '--reps', '1')).stdout).toContain('rep  1');
    expect(await fitted('--trace', 'friday', '--zone', '1', '--out', out)).toMatchObject({
      code: 1,
      stderr: expect.stringContaining('the file is there already'),
    });
  });

  test('as JSON, each number with its unit and its basis', async () => {
    const { stdout } = await fitted('--trace', 'friday', '--zone', '2', '--json');
    const made = JSON.parse(stdout);
    expect(made).toMatchObject({
      trace: 'friday',
      zones: [2],
      direction: { value: 'right', basis: 'measured' },
      entry: { value: 'smooth-apex' },
      written_to: null,
      figures: {
        approach_speed_kmh: { value: expect.closeTo(205, 0), basis: 'measured', zones_count: 1 },
        braking_grip_share: null,
      },
    });
    for (const name of Object.keys(made.figures)) expect(name).toMatch(/_(kmh|m|deg|gear|share)$/);
  });

  test('says of speed alone what is a guess', async () => {
    const { stdout } = await fitted('--trace', 'bare', '--zone', '1', '--turn-deg', '165');
    expect(stdout).toMatch(/^radius .*estimated: v\^2 \/ \(mu g\)/m);
    expect(stdout).toMatch(/^angle turned +165\.0 deg +assumed/m);
    expect(stdout.replace(/\n +/g, ' ')).toContain('- turn-in itself: no signal of turning');
    expect(stdout).toContain('- gears: no gear was logged');
    expect(stdout).toContain('- left or right: no signal with a sign says it');
  });

  test('two corners named as one are refused, or told where they turn the same way', async () => {
    const two = await fitted('--trace', 'friday', '--zone', '1', '--zone', '2');
    expect(two.code).toBe(1);
    expect(two.stderr).toContain('zone 1 turns left, zone 2 right: they are not one corner');
    const same = await fitted('--trace', 'friday', '--zone', '1,4');
    expect(same.code).toBe(0);
    const text = same.stdout.replace(/\n +/g, ' ');
    expect(text).toContain('Caution: speeds differ from zone to zone: make sure');
    expect(text).toContain('Caution: radii differ');
  });

  test.each([
    [['--trace', 'still', '--zone', '1'], 'the log has no speed', 1],
    [['--trace', 'cut', '--zone', '1'], 'it ends while the car still slows', 1],
    [['--zone', '1'], 'no --trace given', 2],
    [['--trace', 'friday'], 'no --zone given', 2],
    [['--trace', 'friday', '--zone', '9'], 'there is no zone 9 in friday', 1],
    [['--trace', 'frday', '--zone', '1'], 'Did you mean friday?', 1],
    [['--trace', 'friday', '--zone', '1', '--car', 'gtt'], 'gt', 1],
    [
      ['--trace', 'friday', '--zone', '1', '--grip', 'much'],
      '--grip: "much" is not possible here',
      2,
    ],
    [['--trace', 'friday', '--zone', '1', '--direction', 'up'], '--direction is "up"', 2],
    [['--trace', 'friday', '--zone', '1', '--name', 'x'.repeat(41)], '--name is', 2],
    [['friday'], 'friday belongs to no option', 2],
  ])('%j: a clear answer', async (argv, message, code) => {
    const ran = await fitted(...argv);
    expect(ran.stderr).toContain(message);
    expect(ran.code).toBe(code);
  });
});

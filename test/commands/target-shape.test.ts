import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { runCommand } from './run-command.ts';

let folder = '';
let out = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-shape-'));
  out = join(folder, 'own.yaml');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const shape = (...argv: readonly string[]) => runCommand(['target', 'shape', ...argv]);
const USUAL = ['--peak', '0.8', '--hit-s', '0.12', '--release-s', '1.5'];

describe('over time', () => {
  // (1 - u)^1.4 of 0.8: halfway through the release 0.8 * 2^-1.4 = 0.30314.
  test('a power law has its hit from 10 to 90 % and its level by the closed form', async () => {
    const more = ['--hold-s', '0.2', '--shape', 'power-law', '--exponent', '1.4', '--out', out];
    const { code, stdout, stderr } = await shape(...USUAL, ...more, '--json');
    expect([code, stderr]).toEqual([0, `Written to ${out}.\n`]);
    const json = JSON.parse(stdout);
    expect(json.written_to).toBe(out);
    expect(json.rise_s).toBeCloseTo(0.12, 3);
    const { rise, release } = parse(readFileSync(out, 'utf8'));
    expect(release).toEqual({ duration_s: 1.5, shape: 'power-law', exponent: 1.4 });
    // 10 u^3 - 15 u^4 + 6 u^5 is 0.1 at u = 0.24664 (hand-worked), so that 0.12 s are 0.50672 of the rise.
    expect(rise.duration_s).toBeCloseTo(0.12 / 0.50672, 3);
    const middle = rise.duration_s + 0.2 + 0.75;
    const i = Math.round(middle / 0.01);
    expect(Math.abs(json.level[i] - 0.30314)).toBeLessThan(0.006);
    expect((await runCommand(['target', 'check', out])).stdout).toBe(`${out}: ok\n`);
  });

  test('bleed, knots, turn and words', async () => {
    const bleed = ['--bleed-s', '0.4', '--bleed-to', '0.7'];
    const knots = ['--shape', 'knots', '--knot', '1,0.5', '--knot', '1.6,0.2'];
    const turn = ['--turn-in-s', '0.8', '--apex-s', '2', '--steering-deg', '-90'];
    const words = ['--name', 'Old: mill', '--corner-type', 'sweeper', '--advice', 'Late. # really'];
    await shape(...USUAL, ...bleed, ...knots, ...turn, ...words, '--out', out);
    expect(parse(readFileSync(out, 'utf8'))).toMatchObject({
      name: 'Old: mill',
      corner_type: 'sweeper',
      advice: 'Late. # really',
      bleed: { duration_s: 0.4, to_level: 0.7 },
      release: {
        shape: 'knots',
        knots: [
          { time_s: 1, level: 0.5 },
          { time_s: 1.6, level: 0.2 },
        ],
      },
      turn_in_s: 0.8,
      apex_s: 2,
      steering: { shape: 'raised-cosine', angle_deg: -90 },
    });
  });
});

test('over distance', async () => {
  const ends = ['--brake-point-m', '90', '--entry-kmh', '180', '--slowest-kmh', '90'];
  const corner = [
    '--shape',
    'two-stage',
    '--knot',
    '40,0.35',
    '--turn-in-m',
    '42',
    '--apex-m',
    '0',
  ];
  const { code, stdout } = await shape(
    '--peak',
    '0.8',
    '--hit-m',
    '6',
    ...ends,
    ...corner,
    '--out',
    out,
  );
  expect(code).toBe(0);
  expect(stdout).toMatch(/brake off.* 0\.0 m/);
  expect(parse(readFileSync(out, 'utf8'))).toMatchObject({
    domain: 'distance',
    brake_point_m: 90,
    release: { brake_off_m: 0, shape: 'two-stage', corner: { distance_m: 40, level: 0.35 } },
  });
});

test.each([
  [[], '--peak is missing'],
  [['--peak', '0.8', '--hit-s', '0.1'], '--release-s is missing'],
  [[...USUAL, 'x'], 'x belongs to no option'],
  [[...USUAL, '--shape', 'round'], 'there is no shape "round"'],
  [[...USUAL, '--shape', 'power-law'], '--exponent is missing'],
  [[...USUAL, '--exponent', '2'], '--exponent belongs to another shape'],
  [[...USUAL, '--hold-m', '2'], '--hold-m belongs to a target over distance'],
  [[...USUAL, '--brake-point-m', '90'], '--hit-s belongs to a target over time'],
  [[...USUAL, '--bleed-to', '0.5'], '--bleed-s is missing'],
  [[...USUAL, '--hold-s', '1,5'], '--hold-s is "1,5"'],
  [[...USUAL, '--shape', 'knots', '--knot', '1;0.5'], '--knot is "1;0.5"'],
  [[...USUAL, '--shape', 'knots', '--knot', '1,0.9'], 'the level goes up to 0.9'],
  [[...USUAL, '--bleed-s', '1', '--bleed-to', '0.9'], 'the bleed ends at 0.9'],
  [['--peak', '1.2', '--hit-s', '0', '--release-s', '1'], 'Use a number from 0.1 to 1'],
])('target shape %j is a wrong use: %s', async (argv, words) => {
  const { code, stdout, stderr } = await shape(...argv, '--out', out);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toContain(words);
  expect(existsSync(out)).toBe(false);
});

test('an existing file is left', async () => {
  await shape(...USUAL, '--out', out);
  const before = readFileSync(out, 'utf8');
  const { code, stderr } = await shape(...USUAL, '--hold-s', '1', '--out', out);
  expect([code, readFileSync(out, 'utf8')]).toEqual([1, before]);
  expect(stderr).toContain('the file is there already');
});

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readTarget } from '../../src/target/read-target.ts';
import { runCommand } from './run-command.ts';

let dir = '';
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'target-derive-'));
});
afterAll(() => rmSync(dir, { recursive: true }));

const derive = (...more: string[]) =>
  runCommand(['target', 'derive', '--car', 'gt', '--corner', 'kiln-hairpin', ...more]);

describe('target derive', () => {
  test('prints a drawing, the key points and what is left out', async () => {
    const { code, stdout } = await derive();
    expect(code).toBe(0);
    expect(stdout).toMatch(/brake point +\d+\.\d m .* km\/h .* bar .* N/);
    expect(stdout).toMatch(/gear 3 to 2 +at .*earliest safe place .* rpm, rear margin \d+ %/);
    expect(stdout).toContain('locks first       front axle');
    expect(stdout).toMatch(/Left out, and which way .*\n {2}brake point too late {2}line delay/);
    expect((await derive('--units', 'imperial')).stdout).toMatch(
      /brake point .* ft .* mph .* psi .* lbf/,
    );
  });

  test('a car that is too light for the corner: says what it cannot do, and draws the rest', async () => {
    const light = ['target', 'derive', '--car', 'light-single-seater', '--corner', 'kiln-hairpin'];
    const { code, stdout } = await runCommand(light);
    expect(code).toBe(0);
    expect(stdout).toMatch(/in gear 5 this car is at its rev limit at \d+ km\/h/);
    expect(stdout).toContain('Caution: the grip would take more than full scale');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('as another picture in place of the drawing over time', async () => {
    expect((await derive('--picture', 'gg')).stdout).toMatch(
      /0 g .*limit, 245 km\/h[\s\S]*limit, 57 km\/h[\s\S]*^brake point +\d/m,
    );
    expect((await derive('--picture', 'gg', '--units', 'imperial')).stdout).toContain(
      'limit, 152 mph',
    );
    expect((await derive('--picture', 'coupling')).stdout).toContain('wheel, deg left');
    expect((await derive('--picture', 'plan')).stdout).toContain("d target's downshift");
    expect((await derive('--picture', 'time')).stdout).toBe((await derive()).stdout);
    const wrong = await derive('--picture', 'pie');
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain('Use time, gg, coupling or plan.');
  });

  test('against another gear or variant: the time and its parts', async () => {
    const { code, stdout } = await derive('--against-gear', '3');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Against qualifying, gear 3 at the slowest point: .* s quicker$/m);
    expect(stdout).toMatch(/^in all +\d+\.\d{3} s +\d+\.\d{3} s +-\d+\.\d{3} s$/m);
    const json = JSON.parse(
      (await derive('--against-variant', 'race', '--exit-m', '50', '--json')).stdout,
    );
    expect(json.time_difference).toMatchObject({
      against_variant: 'race',
      against_slowest_gear: 3,
    });
    expect(json.time_difference.this.total_s - json.time_difference.other.total_s).toBeCloseTo(
      json.time_difference.difference_s,
      5,
    );
  });

  test.each([
    [['--against-gear', '9'], 'the approach is in gear 5'],
    [['--against-gear', '2.5'], 'whole number'],
    [['--against-variant', 'rce'], 'Did you mean race?'],
    [['--exit-m', '100'], 'nothing to compare'],
    [['--against-gear', '3', '--model', 'point-mass'], 'no gears'],
  ])('refuses %j', async (options, words) => {
    const { code, stderr } = await derive(...options);
    expect(code).toBe(2);
    expect(stderr).toContain(words);
  });

  test('prints arrays of one length with units in their names', async () => {
    const { stdout } = await derive('--variant', 'wet', '--model', 'point-mass', '--json');
    const json = JSON.parse(stdout);
    expect(json).toMatchObject({
      car: 'gt',
      corner: 'kiln-hairpin',
      variant: 'wet',
      model: 'point-mass',
    });
    const names = [
      'distance_m',
      'time_s',
      'speed_mps',
      'level',
      'pressure_front_bar',
      'pressure_rear_bar',
      'pedal_force_n',
      'steering_deg',
      'accel_x_mps2',
      'accel_y_mps2',
      'front_utilization',
      'rear_utilization',
      'limiter',
      'gear',
    ];
    for (const name of names) expect(json[name], name).toHaveLength(json.distance_m.length);
    expect(json.distance_m[0]).toBeGreaterThan(json.distance_m[1]);
    expect(json.distance_m.at(-1)).toBe(0);
  });

  test('writes a target file that is read back, and never over another', async () => {
    const file = join(dir, 'derived.yaml');
    expect((await derive('--out', file)).code).toBe(0);
    const text = readFileSync(file, 'utf8');
    expect(text).toMatch(/^# yaml-language-server: /);
    expect(readTarget(text, file)).toMatchObject({ id: 'derived', domain: 'distance' });
    writeFileSync(file, 'mine');
    const again = await derive('--out', file);
    expect(again).toMatchObject({ code: 1, stdout: '' });
    expect(again.stderr).toContain('is there already');
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  test('refuses what it cannot derive from, and writes nothing', async () => {
    const file = join(dir, 'none.yaml');
    expect(await runCommand(['target', 'derive', '--corner', 'kiln-hairpin'])).toMatchObject({
      code: 2,
    });
    expect(await derive('--model', 'three-axle', '--out', file)).toMatchObject({ code: 2 });
    expect(await derive('--variant', 'wett', '--out', file)).toMatchObject({ code: 2 });
    expect(await derive('stray')).toMatchObject({ code: 2 });
    expect(existsSync(file)).toBe(false);
  });
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { saveRig } from '../../src/input/rig/rig-file.ts';
import { virtualRig } from '../../src/input/virtual/virtual-rig.ts';
import { carText } from '../car/car-files.ts';
import { runCommand } from './run-command.ts';

let dir = '';
const file = (name: string): string => join(dir, name);
const here = (): string[] => ['--data-dir', file('data')];

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'car-commands-'));
  mkdirSync(file('data/cars'), { recursive: true });
  writeFileSync(file('data/cars/mine.yaml'), carText('gt.yaml').replace('Marlgate GT', 'My car'));
  writeFileSync(file('data/cars/broken.yaml'), 'name: x\n');
  writeFileSync(file('bad.yaml'), carText('gt.yaml').replace('pitch_hz: 2.0', 'pitch_hz: 9'));
  writeFileSync(
    file('tail-happy.yaml'),
    carText('gt.yaml')
      .replace('balance_bar_front: 0.58', 'balance_bar_front: 0.3')
      .replace('full_scale_pedal_force_n: 1000', 'full_scale_pedal_force_n: 300'),
  );
  // 100 counts are 1 N and full scale lies 57 671 counts above rest: 576.71 N.
  const rig = virtualRig();
  await saveRig(file('data'), {
    ...rig,
    axes: rig.axes.map((axis) =>
      axis.role === 'brake'
        ? {
            ...axis,
            calibration: {
              ...axis.calibration,
              restCounts: 1000,
              fullCounts: 58_671,
              load: { newtonsPerCount: 0.01, zeroCounts: 1000, loads: [], residualN: null },
            },
          }
        : axis,
    ),
  });
});
afterAll(() => rmSync(dir, { recursive: true }));

describe('car list', () => {
  test('own cars first; a broken one is named and keeps nothing else from the list', async () => {
    const { code, stdout, stderr } = await runCommand(['car', 'list', ...here()]);
    expect(code).toBe(0);
    expect(stdout.split('\n')[1]).toMatch(/^mine +My car +GT +289 km\/h +2\.3 g +\d+ N +own$/);
    expect(stdout).toMatch(/^prototype .* bundled$/m);
    expect(stderr).toContain('broken.yaml');
  });

  test('as JSON', async () => {
    const { stdout } = await runCommand(['car', 'list', '--json', ...here()]);
    const { cars } = JSON.parse(stdout) as { cars: Record<string, unknown>[] };
    expect(cars.find(({ id }) => id === 'touring')).toMatchObject({
      kind: 'touring',
      mass_kg: 1250,
      origin: 'bundled',
    });
  });
});

describe('car show', () => {
  test.each(['gt', 'light-single-seater', 'prototype', 'single-seater', 'touring'])(
    '%s draws and tells within 80 columns',
    async (id) => {
      const { code, stdout } = await runCommand(['car', 'show', id, ...here()], {
        LANG: 'C.UTF-8',
      });
      expect(code).toBe(0);
      for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
      expect(stdout).toMatch(/[\u2801-\u28ff]/);
      for (const words of ['braking limit', 'pedal force', 'in front', 'first', 'Left out'])
        expect(stdout).toContain(words);
      expect(stdout).not.toContain('Caution');
    },
  );

  test('the curves rise with downforce: the drawing is fuller at the right', async () => {
    const { stdout } = await runCommand(['car', 'show', 'prototype', ...here()], { LANG: 'C' });
    const lines = stdout.split('\n');
    const top = lines.findIndex((line) => line.includes('braking limit')) + 1;
    expect(stdout).toMatch(/^[\x20-\x7e\n]*$/);
    expect(lines[top]!.indexOf('#')).toBeGreaterThan(55);
    expect(lines[top + 3]!.indexOf('#')).toBeLessThan(15);
  });

  test('in imperial units', async () => {
    const argv = ['car', 'show', 'gt', '--units', 'imperial', ...here()];
    const { stdout } = await runCommand(argv);
    // 0.45 m over 25.4 mm
    expect(stdout).toMatch(/^mass +2866 lb, centre of gravity 17\.7 in high$/m);
    expect(stdout).toMatch(/^179 mph .* lbf .* psi /m);
  });

  test('as JSON, every number with its unit', async () => {
    const { stdout } = await runCommand(['car', 'show', 'gt', '--json', ...here()]);
    const json = JSON.parse(stdout) as { limits: Record<string, unknown>[] };
    expect(json).toMatchObject({ id: 'gt', front_brake_share: 0.781, anti_lock: false });
    expect(json.limits).toHaveLength(10);
    expect(json.limits[9]).toMatchObject({ locks_first: 'front', speed_kmh: 288.69 });
  });

  test('says what is wrong with the brakes', async () => {
    const { stdout } = await runCommand(['car', 'show', file('tail-happy.yaml')]);
    expect(stdout).toMatch(/^Caution: The rear axle locks first/m);
    expect(stdout).toContain('more than full_scale_pedal_force_n');
  });

  test('an unknown car names the nearest; two are wrong usage', async () => {
    const unknown = await runCommand(['car', 'show', 'tourin', ...here()]);
    expect(unknown.code).toBe(1);
    expect(unknown.stderr).toContain('Did you mean touring?');
    expect((await runCommand(['car', 'show', 'gt', 'touring'])).code).toBe(2);
  });
});

describe('car check', () => {
  test('all problems with their place, and warnings of a sound file', async () => {
    const files = [file('bad.yaml'), file('tail-happy.yaml')];
    const { code, stdout, stderr } = await runCommand(['car', 'check', ...files]);
    expect(code).toBe(1);
    expect(stderr).toMatch(/bad\.yaml:\d+:\d+: pitch_hz is 9/);
    expect(stderr).toContain('tail-happy.yaml: The rear axle locks first');
    expect(stdout).toBe(`${file('tail-happy.yaml')}: ok\n`);
  });
});

describe('car match', () => {
  test('the calibrated peak of the saved rig against the car', async () => {
    const argv = ['car', 'match', 'mine', '--speed', '200', '--json', ...here()];
    const { code, stdout } = await runCommand(argv);
    expect(code).toBe(0);
    const json = JSON.parse(stdout) as Record<string, number>;
    expect(json).toMatchObject({
      car: 'mine',
      speed_kmh: 200,
      rig_peak_force_n: 576.7,
      rig_peak_force_lbf: 129.6,
      verdict: 'close',
    });
    expect(json.difference_n).toBeCloseTo(json.rig_peak_force_n! - json.car_peak_force_n!, 6);
  });

  test('in words, in newtons and pounds, with its basis', async () => {
    const argv = ['car', 'match', 'single-seater', '--travel-mm', '40', ...here()];
    const { stdout } = await runCommand(argv);
    expect(stdout).toContain('rig  577 N (130 lbf)');
    expect(stdout).toContain('Too light by');
    expect(stdout).toMatch(/Common practice,\s+without a source/);
    expect(stdout).toContain('travel: car 30 mm, rig 40 mm');
    expect(stdout).toContain('stiffness: car 60 N/mm, rig 14 N/mm');
  });

  test('a pedal that moves otherwise gets a drill that is there', async () => {
    const argv = ['car', 'match', 'gt', '--travel-mm', '20', '--dead-stroke-mm', '2', '--keep'];
    const { code, stdout, stderr } = await runCommand([...argv, ...here()]);
    expect(code).toBe(0);
    expect(stderr).toBe('Kept with the rig.\n');
    expect(stdout.replace(/\s+/g, ' ')).toContain('the car has a longer pedal');
    expect(stdout).toMatch(/^ {2}ebbline drill --plan long-pedal$/m);
    // The next call needs no options: the rig remembers.
    const again = await runCommand(['car', 'match', 'gt', '--json', ...here()]);
    expect(JSON.parse(again.stdout)).toMatchObject({
      travel_mm: { car: 45, rig: 20 },
      dead_stroke_mm: { car: 7, rig: 2 },
      drill: 'ebbline drill --plan long-pedal',
    });
    expect((await runCommand(['plan', 'show', 'long-pedal', ...here()])).code).toBe(0);
    const refused = await runCommand([
      'car',
      'match',
      'gt',
      '--source',
      'virtual',
      '--keep',
      ...here(),
    ]);
    expect(refused.code).toBe(2);
  });

  test('speeds are miles per hour in imperial units', async () => {
    const argv = ['car', 'match', 'gt', '--speed', '100', '--units', 'imperial', '--json'];
    const { stdout } = await runCommand([...argv, ...here()]);
    expect(JSON.parse(stdout)).toMatchObject({ speed_kmh: 160.9 });
  });

  test('a pedal without known loads is not judged', async () => {
    const argv = ['car', 'match', 'gt', '--source', 'virtual', ...here()];
    const { stdout } = await runCommand(argv);
    expect(stdout).toContain('not known, so it cannot be compared');
    expect(stdout).toContain('never put under known loads');
  });

  test('no rig, and values that cannot be', async () => {
    const none = await runCommand(['car', 'match', 'gt', '--data-dir', file('nowhere')]);
    expect(none.code).toBe(1);
    expect(none.stderr).toContain('rig setup');
    for (const bad of [
      ['--speed', 'fast'],
      ['--travel-mm', '-4'],
      ['--source', 'nothing'],
    ]) {
      const ran = await runCommand(['car', 'match', 'gt', ...bad, ...here()]);
      expect(ran.code).toBe(2);
    }
  });
});

import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { csvOf, drive, ZONE } from '../trace/log/driven-log.ts';
import { runCommand } from './run-command.ts';

const folder = temporaryFolder('trace');

const TARGET = join(folder, 'straight-off.yaml');
writeFileSync(
  TARGET,
  `name: Straight off
corner_type: test
domain: time
rise:
  duration_s: 0.2
peak_level: 0.75
hold_s: 0.8
release:
  duration_s: 1.5
  shape: linear
`,
);

async function ebbline(...argv: string[]) {
  const {
    code,
    stdout: out,
    stderr: err,
  } = await runCommand(['trace', ...argv, '--data-dir', folder], { LANG: 'C.UTF-8' });
  return { code, out, err };
}

async function json(...argv: string[]): Promise<Record<string, unknown>> {
  const { code, out, err } = await ebbline(...argv, '--json');
  if (code !== 0) throw new Error(err);
  return JSON.parse(out) as Record<string, unknown>;
}

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

beforeAll(async () => {
  await ebbline('import', file('friday.csv', csvOf(drive())));
});

describe('trace import', () => {
  test('says what was read, by which columns', async () => {
    const { code, out, err } = await ebbline(
      'import',
      join(folder, 'friday.csv'),
      '--name',
      'again',
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('trace again: 3 braking zones in 33.0 s, 3300 rows at 100 Hz');
    expect(out).toContain('brake-front from #2 brake_pressure_front in bar');
  });

  test('refuses with file, line and column, and leaves what was there', async () => {
    const bad = csvOf(drive()).replace('\n7.500,', '\nseven,');
    const { code, err } = await ebbline('import', file('bad.csv', bad), '--name', 'friday');
    expect(code).toBe(1);
    expect(err).toContain(`${join(folder, 'bad.csv')}:752:1: "seven" in time is no number`);
    expect((await json('zones', 'friday')).zones).toHaveLength(3);
    expect(readdirSync(join(folder, 'traces')).filter((name) => name.endsWith('.part'))).toEqual(
      [],
    );
  });

  test('says what is wrong with the call', async () => {
    expect((await ebbline('import')).code).toBe(2);
    expect((await ebbline('import', 'x.csv', '--unit', 'oil=bar')).code).toBe(2);
    expect((await ebbline('import', join(folder, 'none.csv'))).err).toContain('no such file');
    expect(existsSync(join(folder, 'traces', 'none.jsonl'))).toBe(false);
  });
});

describe('trace zones', () => {
  test('gives key points where the model has them', async () => {
    const { zones } = (await json('zones', 'friday')) as { zones: Record<string, number>[] };
    for (const zone of zones) {
      const onS = zone.start_s! % ZONE.everyS;
      const inZone = (key: string): number => zone[key]! + onS - ZONE.firstS;
      expect(zone.peak_pressure_bar).toBeCloseTo(ZONE.peakBar, -1);
      // The fall from 60 bar at 1 s to nothing at 2.5 s passes 50 % at 1.75 s and 10 % at 2.35 s.
      expect(Math.abs(inZone('half_release_s') - 1.75)).toBeLessThan(0.03);
      expect(Math.abs(inZone('final_release_s') - 2.35)).toBeLessThan(0.03);
      expect(zone.speed_plausible).toBe(true);
      // 0.2 m/s^2 a bar: 60 bar * (0.1 + 0.8 + 0.75) s
      expect(zone.speed_lost_mps).toBeGreaterThan(0.95 * 0.2 * 60 * 1.65);
      expect(zone.speed_lost_mps).toBeLessThan(1.05 * 0.2 * 60 * 1.65);
    }
  });

  test('doubts a speed that its deceleration does not explain', async () => {
    const doubled = drive().map((row) => ({ ...row, ax: 2 * row.ax }));
    await ebbline('import', file('doubtful.csv', csvOf(doubled)));
    const { zones } = (await json('zones', 'doubtful')) as { zones: Record<string, unknown>[] };
    expect(zones.map(({ speed_plausible }) => speed_plausible)).toEqual([false, false, false]);
    expect((await ebbline('zones', 'doubtful')).out).toContain('doubtful');
  });

  test('lists the traces, and names the nearest', async () => {
    expect((await json('zones')).traces).toContain('friday');
    expect((await ebbline('zones', 'fridai')).err).toContain('Did you mean friday?');
  });
});

describe('trace score', () => {
  const call = ['score', 'friday', '--target', TARGET, '--zone', '2'];

  test('gives a zone driven like the target nearly all points', async () => {
    const scored = await json(...call, '--full-scale', '80');
    expect(scored).toMatchObject({ outcome: 'scored', score_version: 1, zone: 2 });
    expect(scored.score).toBeGreaterThan(95);
    expect(scored.side).toMatchObject({ start_error_s: null });
  });

  test('survives the noise and the lag of a logger', async () => {
    await ebbline(
      'import',
      file('noisy.csv', csvOf(drive({ noiseBar: 0.6, lagS: 0.04, rateHz: 200 }))),
    );
    const scored = await json(
      'score',
      'noisy',
      '--target',
      TARGET,
      '--zone',
      '1',
      '--full-scale',
      '80',
    );
    expect(scored.score).toBeGreaterThan(85);
  });

  test('sees a zone that is braked too lightly', async () => {
    const light = drive().map((row) => ({ ...row, bar: 0.7 * row.bar }));
    await ebbline('import', file('light.csv', csvOf(light)));
    const scored = await json(
      'score',
      'light',
      '--target',
      TARGET,
      '--zone',
      '1',
      '--full-scale',
      '80',
    );
    expect(scored.score).toBeLessThan(70);
    expect(scored.peak_error_share).toBeCloseTo(-0.3, 1);
  });

  test('asks for the full scale where nobody says it, and for a zone that is there', async () => {
    expect((await ebbline(...call)).err).toContain('--full-scale BAR');
    const { err } = await ebbline('score', 'friday', '--target', TARGET, '--zone', '9');
    expect(err).toContain('there is no zone 9 in friday');
  });
});

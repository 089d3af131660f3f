import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { answerSchemaOf } from '../../src/commands/answers/answers.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { runCommand } from './run-command.ts';

const folder = temporaryFolder('score');

/** A target of our own, so that the numbers below do not hang on the bundled ones. */
const TARGET = join(folder, 'straight-off.yaml');
writeFileSync(
  TARGET,
  `name: Straight off
corner_type: test
domain: time
rise:
  duration_s: 0.2
peak_level: 0.8
hold_s: 0.4
release:
  duration_s: 1.6
  shape: linear
`,
);

interface Rep {
  readonly lateS?: number;
  readonly releaseS?: number;
  readonly gain?: number;
}

/** The same curve written as CSV at 1 kHz, half a second before the cue to one second after brake off. */
function trace(name: string, { lateS = 0, releaseS = 1.6, gain = 1 }: Rep = {}): string {
  const rows = ['# made up', 'time_s,level'];
  for (let i = -500; i < 3400; i++) {
    const t = i / 1000;
    const rise = Math.min(1, Math.max(0, t / 0.2)) ** 3;
    const u = Math.min(1, Math.max(0, t / 0.2));
    const up = rise * (10 - 15 * u + 6 * u * u);
    const down = 1 - Math.min(1, Math.max(0, (t - 0.6 - lateS) / releaseS));
    rows.push(`${t},${(0.8 * gain * up * down).toFixed(6)}`);
  }
  const path = join(folder, `${name}.csv`);
  writeFileSync(path, rows.join('\n'));
  return path;
}

async function ebbline(...argv: string[]) {
  const {
    code,
    stdout: out,
    stderr: err,
  } = await runCommand(['score', '--data-dir', folder, ...argv], { LANG: 'C.UTF-8' });
  return { code, out, err };
}

async function json(path: string): Promise<Record<string, unknown>> {
  const { out, err } = await ebbline('--target', TARGET, '--trace', path, '--json');
  expect(err).toBe('');
  return JSON.parse(out);
}

describe('score', () => {
  test('a copy of the target is worth 100', async () => {
    const result = await json(trace('copy'));
    expect(result).toMatchObject({
      target: 'straight-off',
      outcome: 'scored',
      score_version: 1,
      score_provisional: true,
      sentence: '',
      reapplications_count: 0,
      cause: null,
      flags: [],
    });
    expect(result.score).toBeCloseTo(100, 3);
    expect(result.release_error_level).toBeLessThan(0.001);
  });

  test('a late release is late by what it is', async () => {
    const result = await json(trace('late', { lateS: 0.09 }));
    expect(result.sentence).toBe('released 90 ms late');
    expect(result.start_of_release_error_s).toBeCloseTo(0.09, 2);
    expect(result.brake_off_error_s).toBeCloseTo(0.09, 2);
    expect(result.cause).toMatchObject({ kind: 'timing', rate_ratio: 1, amount_ratio: 1 });
    const lost =
      (result.release_lost_points as number) +
      (result.hit_lost_points as number) +
      (result.smooth_lost_points as number);
    expect(lost + (result.score as number)).toBeCloseTo(100, 9);
  });

  test('a quick release has the time ratio of its cause below 1, the ratio of steepest rates above', async () => {
    // 1.28 s where the target takes 1.6 s, on a straight line.
    const { cause, rate_ratio } = await json(trace('quicker', { releaseS: 1.28 }));
    expect((cause as { rate_ratio: number }).rate_ratio).toBeCloseTo(0.8, 2);
    expect(rate_ratio).toBeGreaterThan(1.2);
    const scored = JSON.stringify(await answerSchemaOf('score'));
    expect(scored).toContain('time of the release over that of the target, slow is above 1');
    expect(scored).toContain(
      'steepest rate of the release over that of the target, steep is above 1',
    );
  });

  test('text: one big number, one sentence, one small table', async () => {
    const path = trace('quick', { releaseS: 1.28 });
    const { code, out, err } = await ebbline('--target', TARGET, '--trace', path);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^[█ \n]+\n20 % too quick off the brake\n/);
    expect(out).toMatch(/^release +\d+ +[\d.]+ {2}error [\d.]+ % of full scale/m);
    expect(out).toContain('score 1, provisional: its limits have not seen enough real pedals');
  });

  test('a bundled target over distance is taken over time', async () => {
    const { code, err } = await ebbline('--target', 'right-angle', '--trace', trace('any'));
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  test('an untouched brake is no rep', async () => {
    const result = await json(trace('nothing', { gain: 0 }));
    expect(result).toMatchObject({
      outcome: 'no-rep',
      score: 0,
      reason: 'never braked',
      sentence: 'no braking was seen',
    });
  });
});

describe('score refuses', () => {
  test.each([
    ['no target', ['--trace', 'x.csv'], 2, /no --target given/],
    ['no trace', ['--target', TARGET], 2, /no --trace given/],
    ['a positional', ['rep.csv'], 2, /unexpected argument "rep.csv"/],
    ['a missing file', ['--target', TARGET, '--trace', join(folder, 'no.csv')], 1, /no such file/],
    ['a folder', ['--target', TARGET, '--trace', folder], 1, /this is a folder/],
    ['an unknown target', ['--target', 'hairpn', '--trace', trace('x')], 1, /Did you mean hairpin/],
  ])('%s', async (_, argv, code, message) => {
    const result = await ebbline(...argv);
    expect(result).toMatchObject({ code, out: '' });
    expect(result.err).toMatch(message);
  });

  test('a broken trace, with its place', async () => {
    const path = join(folder, 'percent.csv');
    writeFileSync(path, 'time_s,level\n0,80\n');
    const { code, err } = await ebbline('--target', TARGET, '--trace', path);
    expect(code).toBe(1);
    expect(err).toMatch(/percent\.csv:2:3: level 80 is outside 0 to 1\n.*divide the column by 100/);
  });
});

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../src/drill/cautions.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { AxisAssignment } from '../../src/input/rig/rig.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { type Ran, runCommand } from './run-command.ts';

const HAIRPIN = new URL('../../profiles/targets/hairpin.yaml', import.meta.url).pathname;
const PEAK_LEVEL = 0.85;
const folder = temporaryFolder('drill-in-newtons');

/** A recording of the virtual rig, its brake put under known loads so that full scale is so many newtons. */
function recordingWith(fullScaleN: number): string {
  const [header, ...batches] = readFileSync(join(folder, 'plain.jsonl'), 'utf8').split('\n');
  const read: { readonly rig: { readonly axes: readonly AxisAssignment[] } } = JSON.parse(header!);
  const axes = read.rig.axes.map((axis) => {
    if (axis.role !== 'brake') return axis;
    const { restCounts, fullCounts } = axis.calibration;
    const newtonsPerCount = fullScaleN / (fullCounts - restCounts);
    const load = { newtonsPerCount, zeroCounts: restCounts, loads: [], residualN: null };
    return { ...axis, calibration: { ...axis.calibration, load } };
  });
  const file = join(folder, `${fullScaleN}.jsonl`);
  const line = JSON.stringify({ ...read, rig: { ...read.rig, axes } });
  writeFileSync(file, [line, ...batches].join('\n'));
  return file;
}

function targetOf(fullScaleN: number): string {
  const file = join(folder, `of-${fullScaleN}.yaml`);
  const text = readFileSync(HAIRPIN, 'utf8');
  writeFileSync(file, `${text}\nfull_scale:\n  pedal_force_n: ${fullScaleN}\n`);
  return file;
}

/** The record of the first rep in the history. */
function recordIn(dataDir: string): RepRecord {
  const store = openHistory(dataDir);
  try {
    const [rep] = [...store.reps({})];
    return store.record(rep!.id);
  } finally {
    store.close();
  }
}

const hardest = (dataDir: string): number => Math.max(...recordIn(dataDir).brake.value);

async function replay(recording: string, target: string, dataDir: string): Promise<Ran> {
  return runCommand([
    ...['drill', '--target', target, '--headless', '--reps', '1', '--seed', '1'],
    ...['--source', `replay:${recording}`, '--data-dir', dataDir],
  ]);
}

describe('a rig put under known loads', () => {
  const plain = join(folder, 'plain');

  beforeAll(async () => {
    const { code } = await runCommand([
      ...['drill', 'hairpin', '--headless', '--reps', '1', '--seed', '1'],
      ...['--source', 'virtual:skilled', '--data-dir', plain],
      ...['--record', join(folder, 'plain.jsonl')],
    ]);
    expect(code).toBe(0);
  });

  test('reads a target in newtons as newtons, and says what 100 % is', async () => {
    const dataDir = join(folder, 'newtons');
    const { stdout, code } = await replay(recordingWith(900), targetOf(1000), dataDir);
    expect(code).toBe(0);
    expect(stdout).toContain('100 % is 1000 N at the pedal, as in the car.');
    expect(hardest(dataDir) / hardest(plain)).toBeCloseTo(0.9, 3);
    const [own, step] = [recordIn(plain), recordIn(dataDir)].map((one) => one.brakeStepLevel);
    expect(step! / own!).toBeCloseTo(0.9, 9);
  });

  test('stays with the own full scale where the target takes more, and says so', async () => {
    const dataDir = join(folder, 'too-light');
    const { stdout, code } = await replay(recordingWith(800), targetOf(1000), dataDir);
    expect(code).toBe(0);
    const asked = 1000 * PEAK_LEVEL;
    expect(stdout).toContain(
      `The car takes ${asked} N, your full scale is 800 N: levels are shares of yours.`,
    );
    expect(hardest(dataDir)).toBe(hardest(plain));
  });

  test('and a target without a force is told nothing', async () => {
    const dataDir = join(folder, 'without');
    const { stdout } = await replay(recordingWith(900), HAIRPIN, dataDir);
    expect(stdout).not.toMatch(/100 % is|full scale is/);
    expect(hardest(dataDir)).toBe(hardest(plain));
  });
});

test('who drives for the first time reads the cautions, and a second time no more', async () => {
  const dataDir = join(folder, 'first-run');
  const drilled = async (): Promise<string> =>
    (await replay(recordingWith(900), HAIRPIN, dataDir)).stdout;
  const first = await drilled();
  for (const caution of CAUTIONS) expect(first).toContain(`${caution}\n`);
  expect(await drilled()).not.toContain(CAUTIONS[0]);
});

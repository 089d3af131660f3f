import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { runCommand } from './run-command.ts';

const HAIRPIN = new URL('../../profiles/targets/hairpin.yaml', import.meta.url).pathname;
const folder = temporaryFolder('drill');
const dataDir = join(folder, 'data');
const recording = join(folder, 'practice.jsonl');
const drill = ['drill', 'hairpin', '--headless', '--json', '--reps', '4', '--seed', '7'];

interface DrillJson {
  readonly driver: string;
  readonly practice: number;
  readonly reps: readonly {
    readonly feedback: string;
    readonly outcome: { readonly score: number };
  }[];
  readonly block: {
    readonly median_score: number;
    readonly reps: number;
    readonly diagnosis: {
      readonly phases: readonly { readonly spread_level: number }[];
      readonly attempts_count: number;
      readonly overlay: { readonly reps_level: readonly number[][]; readonly mean_level: number[] };
    };
  };
}

const scoresOf = ({ reps }: DrillJson): number[] => reps.map(({ outcome }) => outcome.score);

describe('a block by the virtual driver', () => {
  let first: DrillJson;

  beforeAll(async () => {
    const { code, stdout, stderr } = await runCommand([
      ...drill,
      ...['--source', 'virtual:club', '--data-dir', dataDir, '--record', recording],
    ]);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    first = JSON.parse(stdout);
  });

  test('has its reps, shown first, and a summary', () => {
    expect(first.reps.map(({ feedback }) => feedback)).toEqual([
      'shown',
      'shown',
      'shown',
      'hidden',
    ]);
    expect(first.block.reps).toBe(4);
    expect(first.driver).toBe('virtual driver, club');
    for (const score of scoresOf(first)) expect(score).toBeGreaterThan(0);
    const { phases, attempts_count, overlay } = first.block.diagnosis;
    expect(attempts_count).toBe(4);
    expect(phases).toHaveLength(4);
    for (const { spread_level } of phases) expect(spread_level).toBeGreaterThan(0);
    expect(overlay.reps_level).toHaveLength(4);
    expect(overlay.mean_level).toHaveLength(overlay.reps_level[0]!.length);
  });

  test('is in the history: the stored samples score what was shown, to the bit', () => {
    const target = readTarget(readFileSync(HAIRPIN, 'utf8'), HAIRPIN);
    const store = openHistory(dataDir);
    try {
      const reps = [...store.reps({ practiceId: first.practice })];
      expect(reps.map(({ outcomes }) => outcomes[0]?.score)).toEqual(scoresOf(first));
      for (const rep of reps)
        expect(scoreRep(store.record(rep.id), target)).toEqual(rep.outcomes[0]);
    } finally {
      store.close();
    }
  });

  test('scores the same when its raw reports are replayed', async () => {
    const { code, stdout } = await runCommand([
      ...drill,
      ...['--source', `replay:${recording}`, '--data-dir', join(folder, 'replayed')],
    ]);
    expect(code).toBe(0);
    expect(scoresOf(JSON.parse(stdout))).toEqual(scoresOf(first));
  });

  test('scores the same as CSV', async () => {
    const store = openHistory(dataDir);
    const rep = [...store.reps({ practiceId: first.practice })][1];
    const { brake } = store.record(rep?.id ?? 0);
    store.close();
    const csv = join(folder, 'rep.csv');
    const rows = Array.from(brake.timeS, (timeS, i) => `${timeS},${brake.value[i]}`);
    writeFileSync(csv, `time_s,level\n${rows.join('\n')}\n`);
    const { code, stdout } = await runCommand([
      'score',
      '--target',
      'hairpin',
      '--trace',
      csv,
      '--json',
    ]);
    expect(code).toBe(0);
    expect(JSON.parse(stdout).score).toBeCloseTo(scoresOf(first)[1] ?? 0, 9);
  });

  test('is driven again to the bit with the same seed, and differs with another', async () => {
    const again = async (seed: string): Promise<number[]> => {
      const dir = join(folder, `again-${seed}`);
      const argv = [...drill.slice(0, -1), seed, '--source', 'virtual:club', '--data-dir', dir];
      return scoresOf(JSON.parse((await runCommand(argv)).stdout));
    };
    expect(await again('7')).toEqual(scoresOf(first));
    expect(await again('8')).not.toEqual(scoresOf(first));
  });

  test('is read back by progress', async () => {
    const { code, stdout } = await runCommand(['progress', '--data-dir', dataDir]);
    expect(code).toBe(0);
    expect(stdout).toContain('hairpin');
  });
});

describe('wrong usage', () => {
  test.each([
    [['drill', '--headless'], 'no corner named'],
    [['drill', 'hairpn', '--headless'], 'Did you mean hairpin?'],
    [['drill', 'hairpin', '--headless', '--source', 'mouse'], '--source'],
    [
      ['drill', 'hairpin', '--headless', '--source', 'pointer'],
      'the mouse is a pedal only on the screen',
    ],
    [['drill', 'hairpin', '--headless', '--reps', '0'], 'Say a whole number from 1 to 1000.'],
    [['drill', 'hairpin', '--headless', '--foot', 'both'], 'Say left or right.'],
    [['drill', 'hairpin', 'kiln', '--headless'], 'Name one corner'],
    [['drill', 'hairpin', 'kiln', '--headless'], 'it takes one target or corner, not 2'],
    [['drill', 'hairpin', '--headless', '--source', 'replay:/nowhere'], '/nowhere'],
  ])('%j', async (argv, said) => {
    const { code, stdout, stderr } = await runCommand([
      ...argv,
      '--data-dir',
      join(folder, 'wrong'),
    ]);
    expect([1, 2]).toContain(code);
    expect(stdout).toBe('');
    expect(stderr).toContain(said);
  });
});

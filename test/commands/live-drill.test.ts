import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { StoredSubjects } from '../../src/commands/stored-subject.ts';
import { openHistory } from '../../src/history/open-history.ts';
import { scoreLiveRep } from '../../src/score/score-live-rep.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { runCommand } from './run-command.ts';

const folder = temporaryFolder('live');
const recording = join(folder, 'practice.jsonl');
const CORNER = ['drill', '--corner', 'kiln-hairpin', '--headless', '--json', '--seed', '1'];

interface LiveBlock {
  readonly target: string;
  readonly car: string;
  readonly corner: string;
  readonly variant: string;
  readonly practice: number;
  readonly reps: readonly {
    readonly feedback: string;
    readonly call: string | null;
    readonly outcome: {
      readonly outcome: string;
      readonly score: number;
      readonly score_version: number;
      readonly live: { readonly brake_point_error_s: number };
    };
  }[];
  readonly block: { readonly median_score: number };
}

/** A stint with late calls, so that every rep has a zone of its own. */
const STINT = ['--reps', '3', '--stint', '40', '--calls', '0.8'];

async function drive(driver: string, more: readonly string[], dir: string): Promise<LiveBlock> {
  const argv = [...CORNER, '--source', driver, ...more, '--data-dir', join(folder, dir)];
  const { code, stdout } = await runCommand(argv);
  expect(code).toBe(0);
  return JSON.parse(stdout);
}

const scores = ({ reps }: LiveBlock): number[] => reps.map(({ outcome }) => outcome.score);

describe('a block with the live car', () => {
  let first: LiveBlock;

  beforeAll(async () => {
    first = await drive('virtual:club', [...STINT, '--car', 'gt', '--record', recording], 'first');
  });

  test('names car, corner and variant, and scores by version 2', () => {
    expect(first).toMatchObject({
      target: 'gt/kiln-hairpin/qualifying',
      car: 'gt',
      corner: 'kiln-hairpin',
      variant: 'qualifying',
    });
    expect(first.reps).toHaveLength(3);
    const calls = first.reps.map(({ call }) => call);
    expect(calls.filter((call) => call !== null).length).toBeGreaterThan(0);
    for (const call of calls) expect([null, 'defend', 'damp', 'yellow']).toContain(call);
    for (const { outcome } of first.reps)
      expect(outcome).toMatchObject({ outcome: 'scored', score_version: 2 });
  });

  test('is in the history: zone and score come back from it to the bit', async () => {
    const dataDir = join(folder, 'first');
    const store = openHistory(dataDir);
    try {
      const reps = [...store.reps({ practiceId: first.practice })];
      expect(reps.map(({ outcomes }) => outcomes[0]?.score)).toEqual(scores(first));
      expect(new Set(reps.map(({ live }) => live?.discC.front)).size).toBe(3);
      expect(reps.some(({ live }) => live?.call !== null)).toBe(true);
      const subjects = new StoredSubjects(dataDir);
      for (const rep of reps) {
        expect(rep).toMatchObject({ car: 'gt', corner: 'kiln-hairpin', variant: 'qualifying' });
        const zone = await subjects.zone(rep);
        if (zone.kind === 'lost') throw new Error(zone.reason);
        expect(scoreLiveRep(store.record(rep.id), zone.value)).toEqual(rep.outcomes[0]);
      }
    } finally {
      store.close();
    }
  });

  test('scores the same when its raw reports are replayed', async () => {
    const replayed = await drive(`replay:${recording}`, [...STINT, '--car', 'gt'], 'replayed');
    expect(replayed.reps).toEqual(first.reps);
  });
});

describe('the simulated drivers of the live car', () => {
  let skilled: LiveBlock;
  let novice: LiveBlock;

  beforeAll(async () => {
    // Eight for a spread, of which some are hidden; a median needs fewer.
    skilled = await drive('virtual:skilled', ['--reps', '8'], 'skilled');
    novice = await drive('virtual:novice', ['--reps', '5'], 'novice');
  });

  test('differ as their presets do', () => {
    expect(skilled.block.median_score).toBeGreaterThan(70);
    expect(novice.block.median_score).toBeLessThan(50);
    expect(novice.block.median_score).toBeGreaterThan(5);
  });

  test('find the brake point again within 50 ms, shown or hidden', () => {
    const errors = skilled.reps.map(({ outcome }) => outcome.live.brake_point_error_s);
    const mean = errors.reduce((sum, e) => sum + e, 0) / errors.length;
    const variance = errors.reduce((sum, e) => sum + (e - mean) ** 2, 0) / (errors.length - 1);
    expect(Math.sqrt(variance)).toBeLessThan(0.05);
    expect(skilled.reps.some(({ feedback }) => feedback === 'hidden')).toBe(true);
  });
});

test('a corner alone is driven with the default car, which is said; the rep is a line of text', async () => {
  const argv = [
    'drill',
    'kiln-hairpin',
    '--source',
    'virtual:skilled',
    '--reps',
    '1',
    '--seed',
    '1',
  ];
  const { code, stdout, stderr } = await runCommand([
    ...argv,
    ...['--headless', '--units', 'imperial', '--data-dir', join(folder, 'alone')],
  ]);
  expect(code).toBe(0);
  expect(stderr).toBe('No car named: Marlgate GT (gt).\n');
  expect(stdout).toContain('Kiln hairpin, qualifying  Marlgate GT  virtual driver, skilled');
  expect(stdout).toContain('not distance judgement');
  expect(stdout).toMatch(/^rep {2}1 {2}shown .*braked [+-]\d+ ft {2}slowest [+-]\d+ mph/m);
});

describe('wrong usage', () => {
  const quiet = join(folder, 'quiet.yaml');
  const sheet = readFileSync(new URL('../../profiles/corners/heron-sweep.yaml', import.meta.url));
  writeFileSync(quiet, String(sheet).replaceAll(/^ +call: .*\n/gm, ''));

  test.each([
    [['--corner', 'kiln-harpin'], 'Did you mean kiln-hairpin?'],
    [['kiln-harpin'], 'Did you mean kiln-hairpin?'],
    [['--corner', 'kiln-hairpin', '--car', 'prototpye'], 'Did you mean prototype?'],
    [['--corner', 'kiln-hairpin', '--variant', 'wett'], 'Did you mean wet?'],
    [['hairpin', '--car', 'gt'], '"hairpin" is a target, and the live car drives in a corner'],
    [['--target', 'hairpin', '--car', 'gt', '--stint', '30'], 'Leave out --target'],
    [['hairpin', '--corner', 'kiln-hairpin'], 'Name one of them.'],
    [['--corner', 'kiln-hairpin', '--stint', '0'], 'Say seconds between stops'],
    [['--corner', 'kiln-hairpin', '--stint', '1e9'], 'Say seconds between stops'],
    [['--corner', 'kiln-hairpin', '--calls', '30'], 'Say a share from 0 to 1'],
    [['--corner', quiet, '--calls', '0.3'], 'answers to no late call'],
    [['--car', 'gt'], 'no corner named'],
    [['--corner', '/nowhere.yaml'], '/nowhere.yaml'],
  ])('%j', async (argv, said) => {
    const { code, stdout, stderr } = await runCommand([
      ...['drill', '--headless', '--source', 'virtual', ...argv],
      ...['--data-dir', join(folder, 'wrong')],
    ]);
    expect([1, 2]).toContain(code);
    expect(stdout).toBe('');
    expect(stderr).toContain(said);
    expect(stderr.match(/ebbline:/g)?.length ?? 1).toBe(1);
  });
});

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { StoredSubjects } from '../../src/commands/stored-subject.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { StoredRep } from '../../src/history/store.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { type Ran, runCommand } from './run-command.ts';

const folder = temporaryFolder('drill-plan');
const plan = join(folder, 'plan.yaml');
const dataDir = join(folder, 'data');
const drill = (...more: string[]): Promise<Ran> =>
  runCommand([
    ...['drill', '--plan', plan, '--source', 'virtual:club', '--headless', '--seed', '3'],
    ...['--data-dir', dataDir, ...more],
  ]);

writeFileSync(
  plan,
  [
    'name: Short plan',
    'zones:',
    '  - target: hairpin',
    '  - { corner: kiln-hairpin, car: gt, variant: wet }',
    'warm_up_reps: 1',
    'condition: heavy legs',
    'blocks:',
    '  - { reps: 3, order: serial, vary: { level_factor: [0.8, 0.9] } }',
    'carry_over: { reps: 1, zones: [{ target: double-apex }] }',
  ].join('\n'),
);

describe('a plan driven by the virtual driver', () => {
  let ran: Ran;
  let stored: readonly StoredRep[];

  beforeAll(async () => {
    ran = await drill();
    const store = openHistory(dataDir);
    stored = [...store.reps({})];
    store.close();
  });

  test('says block by block where it is, what is driven and what comes next', () => {
    expect(ran).toMatchObject({ code: 0 });
    const lines = ran.stdout.split('\n');
    const at = (text: string): number => lines.findIndex((line) => line.startsWith(text));
    const order = [
      'Short plan  virtual driver, club',
      'block 1 of 3: warm-up, not counted',
      'Kiln hairpin       rep  1  shown ',
      'Next: targets in turn.',
      'block 2 of 3: targets in turn',
      'Kiln hairpin, wet  rep  2  ',
      'Next: carry-over check.',
      'block 3 of 3: carry-over check',
      'Twin barrows       rep  1  hidden ',
      'The plan is done.',
    ].map(at);
    expect(order).not.toContain(-1);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  test('is reviewed under the names that the driver saw', async () => {
    const review = await runCommand(['report', 'last', '--json', '--data-dir', dataDir]);
    const { blocks }: { blocks: { target_id: string; target_name: string }[] } = JSON.parse(
      review.stdout,
    );
    const names = Object.fromEntries(blocks.map((block) => [block.target_id, block.target_name]));
    expect(names).toMatchObject({
      hairpin: 'Kiln hairpin',
      'hairpin/varied': 'Kiln hairpin, varied',
    });
  });

  test('is in the history with phase, order, condition and what was driven', () => {
    expect(
      stored.map(({ phase, order, condition, targetId, corner }) => [
        ...[phase, order, condition, targetId, corner],
      ]),
    ).toEqual([
      ['warm-up', 'blocked', null, 'hairpin', null],
      ['block', 'serial', 'heavy legs', 'hairpin/varied', null],
      ['block', 'serial', 'heavy legs', 'gt/kiln-hairpin/wet', 'kiln-hairpin'],
      ['block', 'serial', 'heavy legs', 'hairpin/varied', null],
      ['carry-over', 'blocked', null, 'double-apex', null],
    ]);
    expect(new Set(stored.map(({ practice }) => practice.id)).size).toBe(1);
  });

  test('each rep is scored again from the history to the bit, varied ones on their own target', async () => {
    const subjects = new StoredSubjects(dataDir);
    const store = openHistory(dataDir);
    const factors = new Set<number>();
    for (const rep of stored.filter(({ live }) => live === null)) {
      const target = await subjects.target(rep);
      if (target.kind === 'lost') return expect.unreachable(target.reason);
      expect(scoreRep(store.record(rep.id), target.value)).toEqual(rep.outcomes[0]);
      if (rep.targetChange?.kind === 'varied') factors.add(rep.targetChange.levelFactor);
    }
    store.close();
    expect(factors.size).toBeGreaterThan(0);
  });

  test('a varied rep without its factors, or on another target than it was driven on, is lost', async () => {
    const subjects = new StoredSubjects(dataDir);
    const varied = stored.find(({ targetChange }) => targetChange !== null)!;
    expect(await subjects.target({ ...varied, targetChange: null })).toEqual({
      kind: 'lost',
      reason: 'varied, from before the factors were kept with the rep',
    });
    const other = { kind: 'varied', levelFactor: 0.51, releaseFactor: 1 } as const;
    expect(await subjects.target({ ...varied, targetChange: other })).toMatchObject({
      kind: 'lost',
      reason: expect.stringContaining('target hairpin has been changed since'),
    });
  });

  test('the next practice of the week has no check, and tells the same as JSON', async () => {
    const { code, stdout } = await drill('--json');
    expect(code).toBe(0);
    const json = JSON.parse(stdout);
    expect(json.plan).toBe('Short plan');
    expect(json.blocks.map(({ phase }: { phase: string }) => phase)).toEqual(['warm-up', 'block']);
    const [, block] = json.blocks;
    expect(block.reps).toHaveLength(3);
    expect(
      block.targets.map(({ name, reps }: { name: string; reps: number }) => [name, reps]),
    ).toEqual([
      ['Kiln hairpin', 2],
      ['Kiln hairpin, wet', 1],
    ]);
    expect(block.notes).toEqual(['The plan is done.']);
  });
});

describe('a plan says itself what is drilled', () => {
  test.each([
    [['--target', 'hairpin'], '--target: --target beside --plan is not possible here'],
    [['--reps', '3'], '--reps: --reps beside --plan is not possible here'],
    [['--car', 'gt'], '--car: --car beside --plan is not possible here'],
    [['hairpin'], '--plan: "hairpin" beside --plan is not possible here'],
  ])('%j beside it is a usage error', async (more, message) => {
    const { code, stderr } = await drill(...more);
    expect(code).toBe(2);
    expect(stderr).toContain(message);
  });

  test('a plan with a name of nothing is refused with its place', async () => {
    const bad = join(folder, 'bad.yaml');
    writeFileSync(bad, 'name: P\nzones: [{ target: harpin }]\nblocks: [{ reps: 3 }]\n');
    const { code, stderr } = await runCommand(['drill', '--plan', bad, '--headless']);
    expect(code).toBe(1);
    expect(stderr).toContain(`${bad}:2:19: there is no target "harpin"`);
  });
});

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { OptionValue } from '../../src/commands/command.ts';
import { rescore } from '../../src/commands/rescore.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { NewRep, StoredRep } from '../../src/history/store.ts';
import { Problem } from '../../src/problem.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import { addAll, aRep, aScore, EVENING_MS, LIVE_START } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { record } from '../score/curves.ts';
import { fakeContext } from './fake-context.ts';

const HAIRPIN = readFileSync(
  new URL('../../profiles/targets/hairpin.yaml', import.meta.url),
  'utf8',
);
const target = readTarget(HAIRPIN, 'hairpin.yaml');
/** A rep that copies the hairpin's target, kept with a score of another version. */
const PERFECT: Partial<NewRep> = {
  car: null,
  corner: null,
  variant: null,
  targetId: 'hairpin',
  targetVersion: target.version,
  record: quantiseRecord(record(target.level.at, { fromS: -0.5, toS: 4 })),
  outcome: aScore({ version: 7, score: 60 }),
};

interface Rescored {
  readonly code: number;
  readonly json: {
    readonly rescored_count: number;
    readonly had_version_count: number;
    readonly void_count: number;
    readonly median_change_points: number | null;
    readonly interrupted: boolean;
    readonly not_rescorable: readonly { readonly reason: string; readonly reps: number[] }[];
  };
}

const SILENT = { write: () => undefined, isTerminal: false, columns: 80, nowMs: () => 0 };

async function run(
  folder: string,
  values: Readonly<Record<string, OptionValue>> = {},
  stop: { readonly asked: boolean } = { asked: false },
): Promise<Rescored> {
  const context = fakeContext(folder);
  const code = await rescore(
    { positionals: [], values: { 'score-version': '1', json: true, ...values } },
    context,
    SILENT,
    stop,
  );
  return { code, json: JSON.parse(context.printed()) };
}

async function withReps(
  reps: readonly NewRep[],
  work: (folder: string, ids: readonly number[]) => Promise<void>,
): Promise<void> {
  await inFolder(async (folder) => {
    const history = openHistory(folder);
    const ids = addAll(history, reps);
    history.close();
    await work(folder, ids);
  });
}

function stored(folder: string): StoredRep[] {
  const history = openHistory(folder);
  const reps = [...history.reps({})];
  history.close();
  return reps;
}

describe('rescore', () => {
  test('adds the score of the stored samples beside the stored one', () =>
    withReps([aRep(PERFECT)], async (folder) => {
      const { code, json } = await run(folder);
      expect(code).toBe(0);
      expect(json).toMatchObject({ rescored_count: 1, had_version_count: 0, not_rescorable: [] });
      // a copy of the target scores 100
      expect(json.median_change_points).toBeCloseTo(40, 6);
      const [rep] = stored(folder);
      expect(rep?.outcomes.map(({ version }) => version)).toEqual([1, 7]);
      expect(rep?.outcomes[0]?.score).toBeCloseTo(100, 6);
      expect(rep?.outcomes[1]).toEqual(PERFECT.outcome);
    }));

  test('twice changes nothing; void reps are left alone', () =>
    withReps(
      [aRep(PERFECT), aRep({ ...PERFECT, number: 2, voided: 'aborted', outcome: null })],
      async (folder) => {
        await run(folder);
        const before = stored(folder);
        const { json } = await run(folder);
        expect(json).toMatchObject({ rescored_count: 0, had_version_count: 1, void_count: 1 });
        expect(json.median_change_points).toBeNull();
        expect(stored(folder)).toEqual(before);
      },
    ));

  test('says why a rep cannot be scored again, and goes on', () =>
    withReps(
      [
        aRep({ ...PERFECT, targetVersion: 'older' }),
        aRep({ ...PERFECT, targetId: 'nowhere', number: 2 }),
        aRep({ ...PERFECT, live: LIVE_START, number: 3 }),
        aRep({ ...PERFECT, number: 4 }),
      ],
      async (folder, ids) => {
        const { json } = await run(folder);
        expect(json.rescored_count).toBe(1);
        expect(json.not_rescorable).toEqual([
          { reason: 'target hairpin has been changed since it was driven', reps: [ids[0]] },
          {
            reason:
              'there is no target "nowhere" in the usual folders: name its file with --target',
            reps: [ids[1]],
          },
          { reason: 'driven with the live car, not over time', reps: [ids[2]] },
        ]);
      },
    ));

  test('finds own targets, and those whose file is named', () => {
    const elsewhere = { ...PERFECT, targetId: 'elsewhere' };
    return withReps([aRep(elsewhere)], async (folder) => {
      const file = join(folder, 'files', 'elsewhere.yaml');
      mkdirSync(join(folder, 'files'));
      writeFileSync(file, HAIRPIN);
      expect((await run(folder)).json.rescored_count).toBe(0);
      expect((await run(folder, { target: [file] })).json.rescored_count).toBe(1);
    });
  });

  test('goes by day and by driver', () =>
    withReps(
      [
        aRep({
          ...PERFECT,
          at: { utcMs: EVENING_MS - 10 * 86_400_000, zone: 'UTC', offsetMin: 0 },
        }),
        aRep({ ...PERFECT, number: 2 }),
      ],
      async (folder) => {
        const since = new Date(EVENING_MS - 5 * 86_400_000).toISOString().slice(0, 10);
        await expect(run(folder, { driver: 'Lou' })).rejects.toThrow('nothing of driver "Lou"');
        expect((await run(folder, { since })).json.rescored_count).toBe(1);
        expect((await run(folder, { driver: 'Kim' })).json.rescored_count).toBe(1);
      },
    ));

  test('that is interrupted keeps what is done, says so, and can be started again', () =>
    withReps(
      Array.from({ length: 3 }, (_, i) => aRep({ ...PERFECT, number: i + 1 })),
      async (folder) => {
        const { code, json } = await run(folder, {}, { asked: true });
        expect(code).toBe(130);
        expect(json).toMatchObject({ rescored_count: 1, interrupted: true });
        expect(stored(folder).map(({ outcomes }) => outcomes.length)).toEqual([2, 1, 1]);
        expect((await run(folder)).json).toMatchObject({ rescored_count: 2, had_version_count: 1 });
      },
    ));

  test('refuses versions that are not there, wrong days and an empty folder', async () => {
    const failure = async (values: Readonly<Record<string, OptionValue>>): Promise<number> => {
      try {
        return (await run('/nowhere/at/all', values)).code;
      } catch (error) {
        return error instanceof Problem ? error.exitCode : 70;
      }
    };
    expect(await failure({ 'score-version': '99' })).toBe(2);
    expect(await failure({ 'score-version': undefined })).toBe(2);
    expect(await failure({ since: '2026-02-30' })).toBe(2);
    expect(await failure({})).toBe(1);
  });
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findPlan } from '../../src/commands/plan-files.ts';
import { runCommand } from './run-command.ts';

let dir = '';
const file = (name: string): string => join(dir, name);
const plan = (...argv: string[]) => runCommand(['plan', ...argv, '--data-dir', file('data')]);
const GOOD = 'name: Mine\nzones: [{ target: own }]\nblocks: [{ reps: 10 }]\n';

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'plan-commands-'));
  mkdirSync(file('data/plans'), { recursive: true });
  mkdirSync(file('data/targets'), { recursive: true });
  writeFileSync(
    file('data/targets/own.yaml'),
    'name: Own\ncorner_type: mine\ndomain: time\npeak_level: 0.6\nrise: { duration_s: 0.25 }\nrelease: { duration_s: 1.5, shape: linear }\n',
  );
  writeFileSync(file('data/plans/mine.yaml'), GOOD);
  writeFileSync(
    file('often.yaml'),
    `${GOOD}feedback: { rule: thinning, stages: [{ shown_share: 1 }] }\n`,
  );
  writeFileSync(file('bad.yaml'), GOOD.replace('own', 'hairpn').replace('reps: 10', 'reps: 0'));
  writeFileSync(file('names.yaml'), GOOD.replace('own', 'hairpn'));
});
afterAll(() => rmSync(dir, { recursive: true }));

describe('plan list', () => {
  test('own plans first, then the bundled ones, within 80 columns', async () => {
    const { code, stdout } = await plan('list');
    expect(code).toBe(0);
    const lines = stdout.trimEnd().split('\n');
    expect(lines[1]).toMatch(/^mine +Mine +10 +1 target +own$/);
    expect(lines.find((line) => line.startsWith('before-test-day'))).toMatch(/8\+12 +4 corners/);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('as JSON', async () => {
    const { plans } = JSON.parse((await plan('list', '--json')).stdout) as {
      plans: Record<string, unknown>[];
    };
    expect(plans.find(({ id }) => id === 'late-stint')).toMatchObject({
      condition: 'late stint',
      stint_gap_s: 45,
      hard_reps: { most: 90 },
      origin: 'bundled',
    });
  });
});

describe('plan show', () => {
  test('says what is done, within 80 columns', async () => {
    const { stdout } = await plan('show', 'maintenance');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(stdout).toContain(
      'block 2       12 reps, shuffled, level 90 to 110 %, release length 80 to 120 %\n',
    );
    expect(stdout).toMatch(/^carry-over +once a week 5 reps, hidden/m);
  });

  test('says what is hardly meant', async () => {
    expect((await plan('show', file('often.yaml'))).stdout).toContain('Caution: 100 % of the reps');
  });

  test('as JSON, defaults filled in', async () => {
    expect(JSON.parse((await plan('show', 'mine', '--json')).stdout)).toMatchObject({
      zones: [{ target: 'own', live: null }],
      warm_up_reps: 4,
      feedback: { rule: 'scheduled', most_shown_in_a_row: 3 },
    });
  });

  test('what is shown as JSON is a plan again, once what says nothing is taken out', async () => {
    for (const id of ['maintenance', 'new-corner', 'late-stint']) {
      const { stdout } = await plan('show', id, '--json');
      const { id: _, ...shown } = JSON.parse(stdout) as Record<string, unknown>;
      const stated = JSON.stringify(shown, (_key, value: unknown) => value ?? undefined);
      writeFileSync(
        file(`${id}.yaml`),
        stated.replace('"late_call_share":0,', '').replace(',"late_call_share":0', ''),
      );
      expect(await findPlan(file(`${id}.yaml`), file('data'))).toEqual(
        await findPlan(id, file('data')),
      );
    }
  });

  test('no plan named is a usage error; an unknown one names the nearest', async () => {
    expect((await plan('show')).code).toBe(2);
    const { code, stderr } = await plan('show', 'maintenence');
    expect(code).toBe(1);
    expect(stderr).toContain('Did you mean maintenance?');
  });
});

describe('plan check', () => {
  test('names are looked up among own and bundled profiles', async () => {
    expect((await plan('check', file('data/plans/mine.yaml'))).stdout).toMatch(/mine\.yaml: ok\n$/);
    const { code, stderr } = await plan('check', file('names.yaml'));
    expect(code).toBe(1);
    expect(stderr).toMatch(
      /names\.yaml:2:19: there is no target "hairpn"\n {2}Did you mean hairpin\?/,
    );
  });

  test('every file and every problem', async () => {
    const { code, stdout, stderr } = await plan('check', file('bad.yaml'), file('often.yaml'));
    expect(code).toBe(1);
    expect(stderr).toContain('bad.yaml:3:18: blocks[0].reps is 0\n');
    expect(stderr).toContain('often.yaml: 100 % of the reps stay shown for good');
    expect(stdout).toBe(`${file('often.yaml')}: ok\n`);
  });
});

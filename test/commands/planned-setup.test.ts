import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { ZoneSubject } from '../../src/commands/drill-subject.ts';
import { builtPlan, plannedSetup } from '../../src/commands/planned-setup.ts';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import { pacedIdentity } from '../../src/drill/plan/paced-identity.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { NewRep } from '../../src/history/store.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';
import { setup } from '../drill/drill-rig.ts';
import { aPractice, aRep, aScore, EVENING_MS } from '../history/fixtures.ts';
import { readPlan } from '../profile/read-sound.ts';

const load = (id: string): Target => {
  const file = new URL(`../../profiles/targets/${id}.yaml`, import.meta.url);
  return readTarget(readFileSync(file, 'utf8'), `${id}.yaml`);
};
const HAIRPIN = load('hairpin');
const subject = (id: string): ZoneSubject => ({ kind: 'target', target: load(id) });
const RIG: Rig = { axes: [{ role: 'steering' }], buttons: [] } as unknown as Rig;
const NO_WHEEL: Rig = { axes: [], buttons: [] } as unknown as Rig;
const DAY_MS = 86_400_000;

const PLAN = [
  'name: P',
  'zones: [{ target: hairpin }]',
  'warm_up_reps: 0',
  'blocks: [{ reps: 2 }]',
  'carry_over: { reps: 1, zones: [{ target: double-apex }, { target: first-release }] }',
];

/** The setup of a plan for a driver who has driven these reps, so many days later. */
function planned(
  lines: readonly string[],
  reps: readonly Partial<NewRep>[],
  days = 0,
  live: ZoneSubject | null = null,
  { target = 'hairpin', rig = RIG } = {},
): DrillSetup {
  const folder = mkdtempSync(join(tmpdir(), 'planned-setup-'));
  const store = openHistory(folder);
  try {
    const practice = store.startPractice(aPractice());
    for (const [i, rep] of reps.entries()) store.addRep(practice, aRep({ number: i + 1, ...rep }));
    const plan = readPlan(lines.join('\n'), 'p.yaml');
    const zones = plan.zones.map(() => ({ subject: subject(target), live }));
    const carryOver = (plan.carryOver?.zones ?? []).map((zone) => ({
      subject: subject(zone.kind === 'target' ? zone.target : ''),
      live: null,
    }));
    const built = builtPlan({ kind: 'plan', plan, zones, carryOver }, rig);
    const now = { utcMs: EVENING_MS + days * DAY_MS, zone: 'Europe/Berlin', offsetMin: 60 };
    const plain = setup({ hoursSinceLastRep: reps.length === 0 ? null : 24 * days });
    return plannedSetup(plain, built, { store, driver: 'Kim', now });
  } finally {
    store.close();
    rmSync(folder, { recursive: true });
  }
}
const outline = ({ plan }: DrillSetup): string[] =>
  plan!.blocks.map(({ phase, reps }) => `${phase} ${reps[0]!.zone.target.id} ${reps.length}`);
const onHairpin = { targetId: 'hairpin', targetVersion: HAIRPIN.version };

describe('what the history makes of a plan', () => {
  test('a new driver begins with the blocks; what was never driven is checked last', () => {
    expect(outline(planned(PLAN, []))).toEqual(['block hairpin 2', 'carry-over double-apex 1']);
  });

  test('a day later the first reps show no target', () => {
    expect(outline(planned(PLAN, [onHairpin], 1))[0]).toBe('first-of-day hairpin 5');
    expect(outline(planned(PLAN, [onHairpin], 0.9))[0]).toBe('block hairpin 2');
    expect(outline(planned(PLAN, [{ targetId: 'double-apex' }], 1))[0]).toBe('block hairpin 2');
  });

  test('what was practised this week is not checked, varied or not', () => {
    const check = (reps: readonly Partial<NewRep>[], days = 0) =>
      outline(planned(PLAN, reps, days)).filter((line) => line.startsWith('carry-over'));
    expect(check([{ targetId: 'double-apex' }])).toEqual(['carry-over first-release 1']);
    expect(check([{ targetId: 'double-apex/varied' }])).toEqual(['carry-over first-release 1']);
    expect(check([{ targetId: 'double-apex' }, { targetId: 'first-release' }])).toEqual([]);
    // A week later both were left alone, the first of them for as long as the other.
    expect(check([{ targetId: 'double-apex' }, { targetId: 'first-release' }], 7)).toEqual([
      'carry-over double-apex 1',
    ]);
  });

  test('the check comes once a week', () => {
    const checked = { targetId: 'first-release', phase: 'carry-over' } as const;
    const lines = (days: number) => outline(planned(PLAN, [checked], days)).at(-1);
    // The evening of the fixtures is a Wednesday; Monday is five days later.
    expect(lines(4)).toBe('block hairpin 2');
    expect(lines(5)).toBe('carry-over double-apex 1');
  });

  test('reps of other versions do not count as experience', () => {
    const zoneOf = (rep: Partial<NewRep>) => planned(PLAN, [rep]).plan!.blocks[0]!.reps[0]!.zone;
    expect(zoneOf(onHairpin).repsInLife).toBe(1);
    expect(zoneOf({ ...onHairpin, targetVersion: 'other' }).repsInLife).toBe(0);
  });

  test('rest and countdown are the plan’s', () => {
    const { timing } = planned([...PLAN, 'rest_s: 12', 'countdown_s: 4'], []);
    expect(timing).toMatchObject({ restS: 12, countdownS: 4, holdS: 2.5 });
  });

  test('under a condition fatigue is judged by earlier reps of the condition', () => {
    const lines = [...PLAN.slice(0, 4), 'condition: late stint'];
    const reps = [
      { ...onHairpin, condition: 'late stint', outcome: aScore({ releaseErrorLevel: 0.08 }) },
      { ...onHairpin, condition: null, outcome: aScore({ releaseErrorLevel: 0.02 }) },
    ];
    const { plan } = planned(lines, reps);
    expect(plan?.condition).toBe('late stint');
    expect(plan?.blocks[0]?.reps[0]?.zone.reference).toEqual([0.08]);
    expect(planned(PLAN, reps).plan?.blocks[0]?.reps[0]?.zone.reference).toBeNull();
  });
});

describe('promotion', () => {
  const lines = [
    ...PLAN.slice(0, 2),
    'warm_up_reps: 1',
    'blocks: [{ reps: 2, vary: { level_factor: [0.8, 0.9] } }]',
    'promote: { in_corridor_reps: 2, of_hidden_reps: 2 }',
  ];
  const hidden = (target: Target, inCorridor: number): Partial<NewRep> => ({
    targetId: target.id,
    targetVersion: target.version,
    feedback: 'hidden',
    outcome: aScore({ inCorridor }),
  });
  const plain = hidden(HAIRPIN, 0.5);
  const paced = hidden(pacedIdentity(HAIRPIN), 0.5);
  const after = subject('double-apex');
  const driven = (
    reps: readonly Partial<NewRep>[],
    how: { target?: string; rig?: Rig } = {},
    live: ZoneSubject | null = after,
  ) => {
    const { plan } = planned(lines, reps, 0, live, how);
    return { blocks: outline({ plan } as DrillSetup), plan: plan! };
  };

  test('follows from the hidden reps of the target, and then from those paced by the steering', () => {
    const over = (...reps: readonly Partial<NewRep>[]) => driven(reps).blocks[1];
    expect(over()).toBe('block hairpin 2');
    expect(over(plain, { ...plain, feedback: 'shown' })).toBe('block hairpin 2');
    expect(over(plain, hidden(HAIRPIN, 0.39))).toBe('block hairpin 2');
    expect(over(plain, plain)).toBe('block hairpin/paced 2');
    expect(over(plain, plain, paced, hidden(pacedIdentity(HAIRPIN), 0.39))).toBe(
      'block hairpin/paced 2',
    );
    expect(over(plain, plain, paced, paced)).toBe('block double-apex 2');
  });

  test('paces the blocks alone, and varies nothing of them', () => {
    const { blocks, plan } = driven([plain, plain]);
    expect(blocks).toEqual(['warm-up hairpin 1', 'block hairpin/paced 2']);
    expect(plan.blocks[1]!.reps.map(({ zone, variation }) => [zone.paced, variation])).toEqual([
      [true, null],
      [true, null],
    ]);
    expect(plan.remarks).toEqual([]);
  });

  test('goes on with the wheel where nothing comes after it', () => {
    const { blocks } = driven([plain, plain, paced, paced], {}, null);
    expect(blocks[1]).toBe('block hairpin/paced 2');
  });

  test('says why the stage is left out, and goes on to the live car', () => {
    const without = driven([plain, plain], { rig: NO_WHEEL });
    expect(without.blocks[1]).toBe('block double-apex 2');
    expect(without.plan.remarks).toEqual([
      'Kiln hairpin: the rig has no wheel, so the release paced by the steering is left out.',
    ]);
    const ramp = load('first-release');
    const rep = hidden(ramp, 0.5);
    const straight = driven([rep, rep], { target: 'first-release' });
    expect(straight.blocks[1]).toBe('block double-apex 2');
    expect(straight.plan.remarks).toEqual([
      expect.stringMatching(/the target has no steering while the brake comes off/),
    ]);
    // nothing is said before it matters
    expect(driven([], { rig: NO_WHEEL }).plan.remarks).toEqual([]);
  });
});

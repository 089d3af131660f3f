import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { ZoneSubject } from '../../src/commands/drill-subject.ts';
import { builtPlan, plannedSetup } from '../../src/commands/planned-setup.ts';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import type { HiddenRep } from '../../src/drill/plan/promotion-stage.ts';
import { readPlan } from '../../src/drill/plan/read-plan.ts';
import { targetSteeringLag } from '../../src/drill/plan/target-steering-lag.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { NewRep } from '../../src/history/store.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';
import { setup } from '../drill/drill-rig.ts';
import { aPractice, aRep, aScore, EVENING_MS } from '../history/fixtures.ts';

const load = (id: string): Target => {
  const file = new URL(`../../profiles/targets/${id}.yaml`, import.meta.url);
  return readTarget(readFileSync(file, 'utf8'), `${id}.yaml`);
};
const HAIRPIN = load('hairpin');
const subject = (id: string): ZoneSubject => ({ kind: 'target', target: load(id) });
const RIG: Rig = { axes: [], buttons: [] } as unknown as Rig;
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
): DrillSetup {
  const folder = mkdtempSync(join(tmpdir(), 'planned-setup-'));
  const store = openHistory(folder);
  try {
    const practice = store.startPractice(aPractice());
    for (const [i, rep] of reps.entries()) store.addRep(practice, aRep({ number: i + 1, ...rep }));
    const plan = readPlan(lines.join('\n'), 'p.yaml');
    const zones = plan.zones.map(() => ({ subject: subject('hairpin'), live }));
    const carryOver = (plan.carryOver?.zones ?? []).map((zone) => ({
      subject: subject(zone.kind === 'target' ? zone.target : ''),
      live: null,
    }));
    const built = builtPlan({ kind: 'plan', plan, zones, carryOver }, RIG);
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
  const lines = [...PLAN.slice(0, 4), 'promote: { in_corridor_reps: 2, of_hidden_reps: 2 }'];
  const lagS = targetSteeringLag(HAIRPIN)!;
  const hidden = ({ inCorridor, steeringLagErrorS }: HiddenRep): Partial<NewRep> => ({
    ...onHairpin,
    feedback: 'hidden',
    outcome: aScore({
      inCorridor,
      side: {
        ...aScore().side,
        steeringLagS: steeringLagErrorS === null ? null : lagS + steeringLagErrorS,
      },
    }),
  });
  const task = (...reps: readonly Partial<NewRep>[]) =>
    planned(lines, reps).plan?.blocks[0]?.reps[0]?.zone.task;

  test('follows from the hidden reps of the target', () => {
    const late = hidden({ inCorridor: 0.5, steeringLagErrorS: 0.2 });
    expect(task()).toBeNull();
    expect(task(late, { ...late, feedback: 'shown' })).toBeNull();
    expect(task(late, late)).toBe('paced by the steering');
    expect(task(late, hidden({ inCorridor: 0.39, steeringLagErrorS: 0 }))).toBeNull();
  });

  test('at last drives what the plan has after the target', () => {
    const good = hidden({ inCorridor: 0.5, steeringLagErrorS: 0 });
    const after = subject('double-apex');
    const driven = (reps: readonly Partial<NewRep>[], live: ZoneSubject | null) =>
      outline(planned(lines, reps, 0, live));
    expect(driven([good], after)).toEqual(['block hairpin 2']);
    expect(driven([good, good], after)).toEqual(['block double-apex 2']);
    // Nothing comes after the target: it goes on, with the wheel.
    expect(driven([good, good], null)).toEqual(['block hairpin 2']);
    expect(task(good, good)).toBe('paced by the steering');
  });

  // The hairpin turns in at 0.95 s and has all its steering at 2.3 s, a raised cosine: half of it at 1.625 s. Its
  // release, (1 - u)^1.4 over 1.7 s from 0.48 s on, is at half where 1 - u = 0.5^(1/1.4) = 0.6095, at 1.144 s.
  test('measures the wheel against the target’s own lag', () => {
    expect(lagS).toBeCloseTo(1.625 - 1.144, 1);
    expect(targetSteeringLag(load('first-release'))).toBeNull();
  });
});

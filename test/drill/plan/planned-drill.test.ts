import { describe, expect, test } from 'vitest';
import type { FinishedRep } from '../../../src/drill/drill-message.ts';
import type { DrillModel } from '../../../src/drill/drill-model.ts';
import { blockTitle } from '../../../src/drill/plan/plan-words.ts';
import type { PlannedPractice, PracticeZone } from '../../../src/drill/plan/planned-practice.ts';
import type { PracticeBlock } from '../../../src/drill/plan/practice-blocks.ts';
import type { RepOrder, RepPhase } from '../../../src/drill/plan/practice-plan.ts';
import { startDrill } from '../../../src/drill/start-drill.ts';
import { update } from '../../../src/drill/update.ts';
import { viewOf } from '../../../src/drill/view-of.ts';
import { scoreRep } from '../../../src/score/score-rep.ts';
import type { Target } from '../../../src/target/target.ts';
import { RAMP, setup } from '../drill-rig.ts';

const SLOW: Target = { ...RAMP, id: 'slow', version: 's1', name: 'Slow ramp' };
const zone = (target: Target, change: Partial<PracticeZone> = {}): PracticeZone => ({
  target,
  live: null,
  repsInLife: 0,
  recent: [],
  reference: null,
  paced: false,
  ...change,
});
const A = zone(RAMP);
const B = zone(SLOW);
const block = (
  phase: RepPhase,
  zones: readonly PracticeZone[],
  order: RepOrder = 'blocked',
  varied: readonly number[] = [],
): PracticeBlock<PracticeZone> => ({
  phase,
  order,
  reps: zones.map((one, i) => ({
    zone: one,
    variation: varied.includes(i) ? { levelFactor: 0.9, releaseFactor: 1.1 } : null,
  })),
});
const practice = (
  blocks: readonly PracticeBlock<PracticeZone>[],
  change: Partial<PlannedPractice> = {},
): PlannedPractice => ({
  name: 'Plan',
  remarks: [],
  blocks,
  feedback: { kind: 'scheduled' },
  mostShownInARow: 3,
  hardReps: { fromLevel: 0.6, most: 60, fatigueLimit: 2.8 },
  condition: null,
  ...change,
});
const started = (plan: PlannedPractice): DrillModel =>
  startDrill(
    setup({ plan, timing: { countdownS: 1, holdS: 0.5, showS: 0, restS: 0.1 }, repsInLife: 40 }),
  );

/** A drill whose driver follows each target, a share of the level above it, and what was stored. */
interface Driven {
  model: DrillModel;
  readonly stored: FinishedRep[];
  ended: boolean;
}
const begin = (plan: PlannedPractice): Driven => ({
  model: started(plan),
  stored: [],
  ended: false,
});

function say(driven: Driven, message: Parameters<typeof update>[1]): void {
  const [model, effects] = update(driven.model, message);
  driven.model = model;
  for (const effect of effects) {
    if (effect.kind === 'score')
      say(driven, {
        kind: 'scored',
        rep: effect.rep,
        outcome: scoreRep(effect.record, effect.target),
      });
    if (effect.kind === 'store') driven.stored.push(effect.rep);
    if (effect.kind === 'end') driven.ended = true;
  }
}

/** Plays in slices of 10 ms until `stop`. @param factor of the target's level, by the number of the attempt */
function drive(
  driven: Driven,
  stop: (model: DrillModel) => boolean,
  factor: (attempt: number) => number = () => 1,
): Driven {
  for (let slices = 0; !stop(driven.model); slices++) {
    expect(slices).toBeLessThan(60_000);
    const { stage, atS, setup: now, attempts } = driven.model;
    const goS = 'cueS' in stage ? stage.cueS + 0.1 : Number.POSITIVE_INFINITY;
    const timeS = Float64Array.from({ length: 10 }, (_, i) => atS + (i + 1) / 1000);
    const level = (t: number): number =>
      t < goS ? 0 : factor(attempts + 1) * now.target.level.at(t - goS);
    const none = { timeS: new Float64Array(0), value: new Float64Array(0) };
    say(driven, {
      kind: 'batch',
      health: [],
      batch: {
        brake: { timeS, value: timeS.map(level) },
        throttle: none,
        clutch: none,
        steering: none,
        buttons: [],
        gaps: [],
        untilS: timeS.at(-1)!,
        dropped: 0,
      },
    });
  }
  return driven;
}
const atSummary = ({ stage }: DrillModel): boolean => stage.kind === 'summary';
const next = (driven: Driven): Driven => {
  say(driven, { kind: 'key', action: 'next' });
  return driven;
};
/** The whole plan, block by block. */
function driveAll(plan: PlannedPractice): Driven {
  const driven = begin(plan);
  while (!driven.ended) next(drive(driven, atSummary));
  return driven;
}

describe('a planned practice', () => {
  const all = driveAll(
    practice(
      [
        block('first-of-day', [A]),
        block('warm-up', [A, A]),
        block('block', [A, B, A], 'serial', [2]),
        block('carry-over', [B]),
      ],
      { condition: 'damp shoes' },
    ),
  );
  const kept = (key: keyof FinishedRep) => all.stored.map((rep) => rep[key]);

  test('keeps with each rep what it was for, in which order, and on what', () => {
    expect(kept('phase')).toEqual([
      'first-of-day',
      ...['warm-up', 'warm-up'],
      ...['block', 'block', 'block'],
      'carry-over',
    ]);
    expect(kept('order').slice(2, 6)).toEqual(['blocked', 'serial', 'serial', 'serial']);
    expect(all.stored.map(({ target }) => target.id)).toEqual([
      ...['ramp', 'ramp', 'ramp', 'ramp', 'slow', 'ramp/varied', 'slow'],
    ]);
    expect(kept('block')).toEqual([1, 2, 2, 3, 3, 3, 4]);
    expect(kept('number')).toEqual([1, 2, 3, 4, 5, 6, 7]);
  });

  test('the list of a mixed block names the target of each rep, varied ones by their plain one', () => {
    const names = (at: number): (string | null)[] => {
      const driven = begin(
        practice([block('block', [A, B, A], 'serial', [2]), block('block', [A])]),
      );
      for (let i = 0; i < at; i++) next(drive(driven, atSummary));
      drive(driven, atSummary);
      return viewOf(driven.model).lastReps.map(({ targetName }) => targetName);
    };
    expect(names(0)).toEqual([A, B, A].map(({ target }) => target.name));
    expect(names(1)).toEqual([null]);
  });

  test('shows the warm-up, hides the checks', () => {
    expect(kept('feedback')).toEqual([
      'first-of-day',
      ...['shown', 'shown'],
      // The third rep of the ramp so far is followed by its fourth: every other is hidden from there on.
      ...['hidden', 'shown', 'shown'],
      'hidden',
    ]);
  });

  test('keeps the condition with the reps of the blocks alone', () => {
    expect(kept('condition')).toEqual([
      ...[null, null, null],
      ...['damp shoes', 'damp shoes', 'damp shoes'],
      null,
    ]);
  });

  test('scores each rep on its own target', () => {
    for (const { outcome } of all.stored) expect(outcome?.score).toBeGreaterThan(95);
  });
});

describe('what the driver sees of a plan', () => {
  const plan = practice([
    block('warm-up', [A, A]),
    block('block', [A, B, B], 'serial'),
    block('carry-over', [B, B]),
  ]);

  test('is the block, why it is driven, and what is driven', () => {
    const driven = begin(plan);
    expect(viewOf(driven.model)).toMatchObject({
      targetName: 'Ramp',
      rep: 1,
      reps: 2,
      plan: { name: 'Plan', title: 'block 1 of 3: warm-up, not counted', notes: [] },
    });
    next(drive(driven, atSummary));
    expect(viewOf(driven.model).plan?.title).toBe('block 2 of 3: targets in turn');
    drive(driven, ({ block: { place }, stage }) => place === 2 && stage.kind === 'arming');
    expect(viewOf(driven.model)).toMatchObject({ targetName: 'Slow ramp', rep: 2, target: SLOW });
  });

  test('between blocks is each target of the block, most reps first, and what comes next', () => {
    const driven = begin(plan);
    next(drive(driven, atSummary));
    drive(driven, atSummary);
    const view = viewOf(driven.model);
    expect(view.targetName).toBe('Slow ramp');
    expect(view.summary?.reps).toBe(2);
    expect(
      view.plan?.summaries.map(({ targetName, summary }) => [targetName, summary.reps]),
    ).toEqual([
      ['Slow ramp', 2],
      ['Ramp', 1],
    ]);
    expect(view.plan?.notes).toEqual(['Next: carry-over check.']);
    next(driven);
    drive(driven, atSummary);
    expect(viewOf(driven.model).plan?.notes).toEqual(['The plan is done.']);
    expect(next(driven).ended).toBe(true);
  });

  test('scores of warm-up and checks are held back until the block is over', () => {
    const driven = begin(plan);
    drive(driven, ({ stage, block: { place } }) => place === 2 && stage.kind === 'arming');
    expect(viewOf(driven.model).lastReps[0]?.outcome).toBeNull();
    drive(driven, atSummary);
    expect(viewOf(driven.model).lastReps[0]?.outcome).not.toBeNull();
  });

  test('a carry-over check stays hidden when the driver asks for feedback', () => {
    const driven = begin(practice([block('carry-over', [B])]));
    say(driven, { kind: 'key', action: 'feedback' });
    expect(viewOf(driven.model)).toMatchObject({
      feedback: 'hidden',
      message: 'The reps of a carry-over check stay hidden.',
    });
  });

  test('what the driver is to do beside stands in the title', () => {
    const paced = zone(RAMP, { paced: true });
    const { model } = begin(practice([block('block', [paced])]));
    expect(viewOf(model).plan?.title).toBe('block 1 of 1: practice, paced by the steering');
    const plan = practice([
      ...[block('warm-up', [A]), block('block', [paced, paced]), block('block', [paced, B])],
    ]);
    expect([1, 2, 3].map((number) => blockTitle(plan, number))).toEqual([
      'block 1 of 3: warm-up, not counted',
      'block 2 of 3: practice, paced by the steering',
      'block 3 of 3: practice, partly paced by the steering',
    ]);
  });

  test('without a plan there is none', () => {
    expect(viewOf(startDrill(setup())).plan).toBeNull();
  });
});

describe('feedback of a plan', () => {
  test('counts each zone apart, and never shows more in a row than it says', () => {
    const plan = practice([block('block', [A, A, A, B, A, A])], {
      feedback: {
        kind: 'thinning',
        counted: 'practice',
        stages: [
          { untilRep: 4, shownShare: 1 },
          { untilRep: Number.POSITIVE_INFINITY, shownShare: 0 },
        ],
      },
      mostShownInARow: 2,
    });
    const { stored } = driveAll(plan);
    expect(stored.map(({ feedback }) => feedback)).toEqual([
      ...['shown', 'shown', 'hidden'],
      'shown',
      ...['shown', 'hidden'],
    ]);
  });
});

describe('hard reps', () => {
  const six = [A, A, A];
  const plan = practice([block('block', six), block('block', six), block('block', six)], {
    hardReps: { fromLevel: 0.75, most: 4, fatigueLimit: 2.8 },
  });

  test('end the practice with the block in which the cap is reached', () => {
    const driven = begin(plan);
    next(drive(driven, atSummary));
    drive(driven, atSummary);
    expect(viewOf(driven.model).plan?.notes).toEqual(['6 hard reps: that is enough for today.']);
    expect(next(driven).ended).toBe(true);
    expect(driven.stored).toHaveLength(6);
  });

  test('are those that were pressed hard, whatever was asked for', () => {
    const driven = begin(plan);
    for (const _ of plan.blocks) next(drive(driven, atSummary, () => 0.9));
    expect(driven.model.plan?.hardReps).toBe(0);
    expect(driven.stored).toHaveLength(9);
  });

  test('that were aborted count too; one that was lost with its device is driven again', () => {
    const driven = begin(plan);
    const braking = ({ stage, atS }: DrillModel): boolean =>
      stage.kind === 'braking' && atS > stage.originS + 0.3;
    drive(driven, braking);
    say(driven, { kind: 'device-lost', name: 'pedals' });
    say(driven, { kind: 'device-back', name: 'pedals' });
    drive(driven, braking);
    say(driven, { kind: 'key', action: 'repeat' });
    expect(driven.model.plan?.hardReps).toBe(2);
    expect(driven.stored.map(({ voided, place }) => [voided, place])).toEqual([
      ['device lost', 1],
      ['aborted', 1],
    ]);
    expect(driven.model.block.place).toBe(2);
    expect(driven.model.plan?.zones.get(A)?.reps).toBe(1);
  });
});

describe('fatigue', () => {
  const twenty = Array.from({ length: 20 }, () => A);
  // Errors alternate a little, so that reps differ; the last ten are a tenth too light.
  const tired = (attempt: number): number => (attempt > 10 ? 0.9 : 1) - 0.01 * (attempt % 2);

  test('is said between blocks, with the rise and its limit', () => {
    const driven = begin(practice([block('block', twenty), block('block', [A])]));
    drive(driven, atSummary, tired);
    const [note, after] = viewOf(driven.model).plan?.notes ?? [];
    expect(note).toMatch(
      /^Ramp: release error up \d\.\d % on the first ten reps, limit \d\.\d %\. Tired leg: stop here\.$/,
    );
    expect(after).toBe('Next: practice.');
  });

  test('is said at the rep with which the limit is passed for the third time in a row, between reps', () => {
    const many = Array.from({ length: 30 }, () => A);
    const driven = begin(practice([block('block', many)]));
    const said: [number, string, string][] = [];
    const watch = (model: DrillModel): boolean => {
      const { message, phase } = viewOf(model);
      if (message?.includes('Tired leg') === true) said.push([model.attempts, phase, message]);
      return atSummary(model);
    };
    drive(driven, watch, tired);
    const first = said[0]!;
    // judged from the twentieth on, and passed there already
    expect(first[0]).toBe(22);
    expect(first[2]).toMatch(/^Ramp: release error up/);
    expect(new Set(said.map(([attempts]) => attempts))).toEqual(new Set([22]));
    const phases = new Set(said.map(([, phase]) => phase));
    expect(phases).toContain('rest');
    expect(phases).not.toContain('braking');
    expect(phases).not.toContain('cue');
    // once is enough, as a line of the list too
    const warned = driven.model.block.done.filter(({ warning }) => warning !== null);
    expect(warned.map(({ tag }) => tag.place)).toEqual([22]);
  });

  test('fresh legs are not warned, and two bad reps are not three', () => {
    const many = Array.from({ length: 30 }, () => A);
    const warnings = (factor: (attempt: number) => number): number => {
      const driven = begin(practice([block('block', many)]));
      drive(driven, atSummary, factor);
      return driven.model.block.done.filter(({ warning }) => warning !== null).length;
    };
    expect(warnings((attempt) => 0.97 - 0.01 * (attempt % 2))).toBe(0);
    // the mean of the last ten is lifted by the two for ten reps: scatter is lifted with it
    expect(
      warnings(
        (attempt) => (attempt === 21 || attempt === 22 ? 0.93 : 0.97) - 0.01 * (attempt % 2),
      ),
    ).toBe(0);
  });

  test('under a condition is judged by earlier reps of the condition', () => {
    const heavy = Array.from({ length: 10 }, (_, i) => 0.05 + 0.001 * (i % 2));
    const known = zone(RAMP, { reference: heavy });
    const driven = begin(
      practice(
        [
          block(
            'block',
            twenty.map(() => known),
          ),
        ],
        { condition: 'late stint' },
      ),
    );
    drive(driven, atSummary, tired);
    expect(viewOf(driven.model).plan?.notes).toEqual(['The plan is done.']);
  });
});

import { describe, expect, test } from 'vitest';
import type { DrillModel } from '../../../src/drill/drill-model.ts';
import { lapBlocks } from '../../../src/drill/event/lap-blocks.ts';
import { blockTitle } from '../../../src/drill/plan/plan-words.ts';
import type { PlannedPractice, PracticeZone } from '../../../src/drill/plan/planned-practice.ts';
import { viewOf } from '../../../src/drill/view-of.ts';
import type { Target } from '../../../src/target/target.ts';
import { type Fed, feed, fresh, RAMP, say } from '../drill-rig.ts';

const zone = (
  name: string,
  gapS: number,
  target: Target = { ...RAMP, id: name, name },
): PracticeZone => ({
  target,
  live: null,
  repsInLife: 9,
  recent: [],
  reference: null,
  paced: false,
  gapS,
});
const ZONES = [zone('Kiln', 20), zone('Coil', 7.4)];
const laps = (count: number, outLap: boolean): PlannedPractice => ({
  name: 'Sallow Fen',
  remarks: [],
  lapZones: 2,
  blocks: lapBlocks({ zones: ZONES, outLap: outLap ? ZONES : null, laps: count, mostReps: 60 }),
  feedback: { kind: 'scheduled' },
  mostShownInARow: 3,
  hardReps: { fromLevel: 0.6, most: 60, fatigueLimit: 2.8 },
  condition: null,
});
const started = (count: number, outLap = false): DrillModel =>
  fresh({ plan: laps(count, outLap), target: ZONES[0]!.target });

/** Brakes at the cue and is off 1.3 s later, whichever zone it is. */
function driven(model: DrillModel, untilKind = 'after'): Fed {
  let [now, fromS]: [DrillModel, number] = [model, model.atS];
  let onS: number | null = null;
  const press = (t: number): number => {
    const s = onS === null ? -1 : t - onS;
    return Math.max(0, Math.min(0.7, s / 0.1, 1.3 - s));
  };
  for (let i = 0; i < 4000 && now.stage.kind !== untilKind; i++) {
    if (now.stage.kind === 'ready' && onS === null) onS = now.stage.cueS + 0.1;
    now = feed(now, { brake: press }, { fromS, toS: fromS + 0.008 }).model;
    fromS += 0.008;
  }
  return { model: now, effects: [] };
}

const restOf = ({ stage }: DrillModel) => (stage.kind === 'after' ? stage : null);

describe('the road between two zones', () => {
  test('the rest is as long as the road leaves: 20 s less the 6.4 s of the drill itself', () => {
    const { revealAtS, nextS, restFromS } = restOf(driven(started(1)).model)!;
    expect(restFromS - revealAtS).toBeCloseTo(2.5, 9);
    expect(nextS - revealAtS).toBeCloseTo(20 - 6.4, 9);
  });

  test('on a short road the result stands for less long', () => {
    const first = driven(started(1)).model;
    const second = driven(
      say({ model: first, effects: [] }, { kind: 'key', action: 'next' }).model,
    );
    const { revealAtS, nextS, restFromS } = restOf(second.model)!;
    expect(restFromS - revealAtS).toBeCloseTo(1, 9);
    expect(nextS).toBeCloseTo(restFromS, 9);
  });

  test('an answer that is waited for has the whole road, and does not lengthen it', () => {
    const fresh = started(1);
    const setup = { ...fresh.setup, ratingWaitS: 60 };
    const { model } = driven({ ...fresh, asksRating: true, setup });
    const asked = restOf(model)!;
    // 3.9 s of the road are driven by the drill itself.
    expect(asked.nextS - model.atS).toBeCloseTo(20 - 3.9, 1);
    expect(asked.revealAtS).toBe(asked.nextS);
    const keys = ['low', 'high'] as const;
    const answered = keys.reduce((fed: Fed, action) => say(fed, { kind: 'key', action }), {
      model,
      effects: [],
    });
    const { revealAtS, restFromS, nextS } = restOf(answered.model)!;
    expect(nextS).toBe(asked.nextS);
    expect(revealAtS - model.atS).toBeCloseTo(2.5, 1);
    expect(restFromS - revealAtS).toBeCloseTo(2.5, 9);
  });

  test('space comes sooner', () => {
    const { model } = driven(started(1));
    const next = say({ model, effects: [] }, { kind: 'key', action: 'next' }).model;
    expect(next.stage.kind).toBe('arming');
    expect(next.setup.target.name).toBe('Coil');
  });

  test('a false start does not shorten the road: nothing is held back, and 3.9 s are driven', () => {
    const counting = driven(started(1), 'countdown').model;
    const fromS = counting.atS;
    const press = (t: number): number => (t > fromS + 1 ? 0.5 : 0);
    const { model } = feed(counting, { brake: press }, { fromS, toS: fromS + 2 });
    const { revealAtS, nextS } = restOf(model)!;
    expect(nextS - revealAtS).toBeCloseTo(20 - 3.9, 9);
  });
});

describe('what the driver reads', () => {
  test('lap and zone, and where the road leads', () => {
    const model = started(2);
    expect(viewOf(model).plan).toMatchObject({
      title: 'lap 1 of 2: zone 1 of 2',
      lap: { roadTo: null },
    });
    const { model: resting } = driven(model);
    expect(viewOf(resting).plan).toMatchObject({
      title: 'lap 1 of 2: zone 1 of 2',
      lap: { roadTo: 'Coil' },
    });
  });

  test('an out-lap shows no target, and counts as a lap', () => {
    const view = viewOf(started(3, true));
    expect(view).toMatchObject({ feedback: 'first-of-day', target: null });
    expect(view.plan!.title).toBe('out-lap: zone 1 of 2');
    expect(blockTitle(laps(3, true), 1)).toBe('out-lap: first of the day');
    expect(blockTitle(laps(3, true), 2)).toBe('laps 2 to 3 of 3');
  });

  test('between blocks: what comes next, every corner for itself; at last that the laps are done', () => {
    let model = started(2, true);
    for (let rep = 0; rep < 2; rep++) {
      model = driven(model).model;
      model = say({ model, effects: [] }, { kind: 'key', action: 'next' }).model;
    }
    expect(model.stage.kind).toBe('summary');
    const { plan } = viewOf(model);
    expect(plan!.title).toBe('out-lap: first of the day');
    expect(plan!.notes).toEqual(['Next: lap 2 of 2.']);
    expect(plan!.summaries.map(({ targetName }) => targetName)).toEqual(['Kiln', 'Coil']);
    model = say({ model, effects: [] }, { kind: 'key', action: 'next' }).model;
    expect(viewOf(model).plan!.title).toBe('lap 2 of 2: zone 1 of 2');
  });

  test('laps that are left in the middle are not said to be done', () => {
    const end = (model: DrillModel): readonly string[] => {
      const left = say({ model, effects: [] }, { kind: 'key', action: 'finish' }).model;
      expect(left.stage.kind).toBe('summary');
      return viewOf(left).plan!.notes;
    };
    const first = driven(started(1)).model;
    expect(end(first)).toEqual(['The laps ended early.']);
    const both = say({ model: first, effects: [] }, { kind: 'key', action: 'next' }).model;
    expect(end(driven(both).model)).toEqual(['The laps are done.']);
  });
});

import { describe, expect, test } from 'vitest';
import type { DrillEffect } from '../../src/drill/drill-message.ts';
import type { DrillModel } from '../../src/drill/drill-model.ts';
import { pacedIdentity } from '../../src/drill/plan/paced-identity.ts';
import type { PracticeZone } from '../../src/drill/plan/planned-practice.ts';
import { startDrill } from '../../src/drill/start-drill.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import type { Target } from '../../src/target/target.ts';
import { type Feed, feed, RAMP, type Script, START_S, setup } from './drill-rig.ts';

/** The ramp goes from 80 % at 0.4 s to 0 at 1.4 s; its wheel from 0 to 100 degrees left from 0.5 to 1.5 s. */
const TURNING: Target = pacedIdentity({
  ...RAMP,
  steering: { start: 0.5, end: 1.5, at: (x) => 100 * Math.min(1, Math.max(0, x - 0.5)) },
});
const zone: PracticeZone = {
  target: TURNING,
  live: null,
  repsInLife: 0,
  recent: [],
  reference: null,
  paced: true,
};
const fresh = (): DrillModel =>
  startDrill(
    setup({
      plan: {
        name: 'P',
        remarks: [],
        blocks: [{ phase: 'block', order: 'blocked', reps: [{ zone, variation: null }] }],
        feedback: { kind: 'scheduled' },
        mostShownInARow: 3,
        hardReps: { fromLevel: 0.6, most: 60, fatigueLimit: 2.8 },
        condition: null,
      },
    }),
  );
/** Hands that are so much later than the target's, and a foot that follows what they ask for. */
const late = (lateS: number, foot = lateS): Script => {
  const place = (t: number, by: number): number => (t < 0.55 ? t : Math.max(0.55, t - by));
  return {
    brake: (t) => TURNING.level.at(place(t - START_S, foot)),
    steering: (t) => TURNING.steering!.at(place(t - START_S, lateS)),
  };
};
const driven = (script: Script, toS: number, how: Partial<Feed> = {}) =>
  feed(fresh(), script, { fromS: 0, toS: START_S + toS, ...how });
const scoreEffect = (effects: readonly DrillEffect[]) =>
  effects.find(
    (effect): effect is Extract<DrillEffect, { kind: 'score' }> => effect.kind === 'score',
  );

describe('a rep paced by the steering', () => {
  test('the now line waits for the wheel, and goes with it', () => {
    const nowAt = (sinceS: number) => viewOf(driven(late(0.4), sinceS).model).nowS;
    expect(nowAt(0.5)).toBeCloseTo(0.5, 2);
    expect(nowAt(0.8)).toBeCloseTo(0.55, 2);
    expect(nowAt(1.4)).toBeCloseTo(1, 2);
    expect(nowAt(1.7)).toBeCloseTo(1.3, 2);
    expect(viewOf(driven(late(0.4), 0.8).model).paced).toBe(true);
  });

  test('the own trace stands at its places: who releases with the wheel draws the target', () => {
    const { own, liveErrorLevel } = viewOf(driven(late(0.4), 1.7).model);
    const held = own!.timeS.findLastIndex((placeS) => placeS <= 1);
    expect(own!.value[held]).toBeCloseTo(TURNING.level.at(1), 1);
    for (let i = 1; i < own!.timeS.length; i++)
      expect(own!.timeS[i]!).toBeGreaterThanOrEqual(own!.timeS[i - 1]!);
    expect(liveErrorLevel).toBeLessThan(0.02);
    // by the clock the same foot is 0.4 s early where the wheel is late
    const { liveErrorLevel: wrong } = viewOf(driven(late(0.4, 0), 1.7).model);
    expect(wrong).toBeGreaterThan(0.1);
  });

  test('ends when the wheel has taken the target to its brake off, and says that it was paced', () => {
    const { effects } = driven(late(0.4), 4);
    const effect = scoreEffect(effects)!;
    expect(effect).toMatchObject({ paced: true, target: { id: 'ramp/paced' } });
    // brake off at 1.4 s of the target, 0.4 s later by the wheel, and 0.6 s of rest behind
    expect(effect.record.endS - (START_S - 3.301)).toBeCloseTo(1.8 + 0.6, 1);
  });

  test('does not wait for ever: for a wheel that never comes, with the brake off or held', () => {
    const still = (brake: (t: number) => number): Script => ({ brake, steering: () => 0 });
    const off = scoreEffect(
      driven(
        still((t) => TURNING.level.at(t - START_S)),
        5,
      ).effects,
    )!;
    expect(off.record.endS - (START_S - 3.301)).toBeCloseTo(1.4 + 1 + 0.6, 1);
    const held = scoreEffect(
      driven(
        still((t) => (t < START_S ? 0 : 0.8)),
        7,
      ).effects,
    )!;
    expect(held.record.endS - (START_S - 3.301)).toBeCloseTo(1.4 + 4, 1);
  });

  test.each([1, 3, 50, 4000])('is the same in batches of %i samples', (batch) => {
    for (const script of [late(0.4), late(0.2, 0), late(9, 0)]) {
      const one = scoreEffect(driven(script, 7).effects)!.record;
      const other = scoreEffect(driven(script, 7, { batch }).effects)!.record;
      expect(other.endS).toBeCloseTo(one.endS, 9);
      expect(other.brake.value).toEqual(one.brake.value);
    }
  });
});

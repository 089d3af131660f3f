import { describe, expect, test } from 'vitest';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import { scheduledFeedback } from '../../src/drill/feedback-schedule.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { type Fed, feed, fresh, RAMP, type Script, START_S, say } from './drill-rig.ts';

const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };
const OVER_S = START_S + 2.02;
const QUICK: DrillSetup['timing'] = { countdownS: 3, holdS: 2.5, showS: 0, restS: 0.2 };

const until = (toS: number, change: Partial<DrillSetup> = {}): Fed =>
  feed(fresh(change), good, { fromS: 0, toS });
const seen = (toS: number, change: Partial<DrillSetup> = {}) => viewOf(until(toS, change).model);

describe('the schedule', () => {
  const plan = (from: number, to: number, seed = 1) =>
    Array.from({ length: to - from }, (_, i) => scheduledFeedback(from + i, seed));
  const shownShare = (reps: readonly string[]) =>
    reps.filter((feedback) => feedback === 'shown').length / reps.length;

  test('shows three reps of a new target, then every other one', () => {
    expect(plan(0, 8)).toEqual([
      ...['shown', 'shown', 'shown'],
      ...['hidden', 'shown', 'hidden', 'shown', 'hidden'],
    ]);
    expect(shownShare(plan(3, 23))).toBe(0.5);
  });

  test('then thins out to half by chance and to a third for good', () => {
    const seeds = Array.from({ length: 60 }, (_, seed) => seed);
    const share = (from: number, to: number) =>
      shownShare(seeds.flatMap((seed) => plan(from, to, seed)));
    // four standard errors of 1200 draws
    expect(Math.abs(share(23, 43) - 0.5)).toBeLessThan(0.058);
    expect(Math.abs(share(43, 63) - 0.33)).toBeLessThan(0.055);
  });

  test('is decided by the seed', () => {
    expect(plan(23, 63, 5)).toEqual(plan(23, 63, 5));
    expect(plan(23, 63, 5)).not.toEqual(plan(23, 63, 6));
  });
});

describe('a hidden rep', () => {
  const hidden = { repsInLife: 3 };

  test('shows the target and the clock, not the own trace, bar or error', () => {
    const view = seen(START_S + 1, hidden);
    expect(view).toMatchObject({ phase: 'braking', feedback: 'hidden', target: RAMP });
    expect(view).toMatchObject({ own: null, brakeLevel: null, liveErrorLevel: null });
    expect(view.nowS).toBeCloseTo(1, 1);
  });

  test('shows both traces once the result is no longer held back', () => {
    expect(seen(OVER_S + 2.4, hidden).own).toBeNull();
    expect(seen(OVER_S + 2.6, hidden).own?.timeS.length).toBeGreaterThan(1900);
  });

  test('differs from a shown one', () => {
    const view = seen(START_S + 1, { repsInLife: 4 });
    expect(view.feedback).toBe('shown');
    expect(view.brakeLevel).toBeCloseTo(0.32, 9);
    expect(view.own?.timeS.length).toBeGreaterThan(900);
    expect(seen(OVER_S + 1, { repsInLife: 4 }).own).not.toBeNull();
  });
});

describe('the driver', () => {
  const toggle = (fed: Fed) => say(fed, { kind: 'key', action: 'feedback' });

  test('turns the coming rep and those after it, and a second time goes back to the schedule', () => {
    const turned = toggle(until(1));
    expect(viewOf(turned.model)).toMatchObject({
      feedback: 'hidden',
      message: 'From the next rep on: hidden.',
    });
    expect(viewOf(toggle(turned).model).feedback).toBe('shown');
  });

  test('cannot change a rep that is under way: what was shown is what is stored', () => {
    const turned = toggle(until(START_S + 0.5));
    expect(viewOf(turned.model).feedback).toBe('shown');
    const { effects } = feed(turned.model, good, { fromS: START_S + 0.5, toS: OVER_S });
    expect(effects.at(-1)).toMatchObject({ kind: 'store', rep: { feedback: 'shown' } });
  });

  test('can ask for one kind for the whole practice', () => {
    expect(seen(1, { repsInLife: 3, feedback: 'shown' }).feedback).toBe('shown');
  });
});

describe('first-of-day reps', () => {
  const newDay = { repsInLife: 20, hoursSinceLastRep: 24, timing: QUICK };

  test('come 24 h or more after the last rep of anything, on a target that is known', () => {
    expect(seen(1, newDay)).toMatchObject({ feedback: 'first-of-day', reps: 5 });
    expect(seen(1, { ...newDay, hoursSinceLastRep: 23.9 })).toMatchObject({ reps: 10 });
    expect(seen(1, { ...newDay, repsInLife: 0 })).toMatchObject({ feedback: 'shown' });
    expect(seen(1, { ...newDay, hoursSinceLastRep: null }).feedback).not.toBe('first-of-day');
  });

  test('show neither target nor own trace nor score before all five are over', () => {
    // each rep: 0.3 armed + 3 countdown + 0.1 + 2 + 2.5 held back + 0.2 rest
    const lap = 8.1;
    const five: Script = {
      brake: (t) => RAMP.level.at((((t - START_S) % lap) + lap) % lap),
    };
    const play = (toS: number) => feed(fresh(newDay), five, { fromS: 0, toS });
    const fourth = viewOf(play(START_S + 3 * lap + 4.55).model);
    expect(fourth).toMatchObject({ rep: 4, target: null, own: null, result: null });
    expect(fourth.lastReps.map(({ outcome }) => outcome)).toEqual([null, null, null, null]);
    const all = play(START_S + 4 * lap + 4.55);
    const summary = viewOf(all.model);
    expect(summary).toMatchObject({ phase: 'summary', target: RAMP, summary: { reps: 5 } });
    expect(summary.lastReps.every(({ outcome }) => outcome !== null)).toBe(true);
    const block = say(all, { kind: 'key', action: 'next' });
    expect(viewOf(block.model)).toMatchObject({ phase: 'arming', rep: 1, reps: 10 });
    expect(viewOf(block.model).feedback).not.toBe('first-of-day');
  });

  test('stay what they are when the driver asks for feedback', () => {
    const fed = say(until(1, newDay), { kind: 'key', action: 'feedback' });
    expect(viewOf(fed.model)).toMatchObject({
      feedback: 'first-of-day',
      message: 'First-of-day reps show no target.',
    });
  });
});

import { describe, expect, test } from 'vitest';
import type { LiveEvent } from '../../../src/live/live-event.ts';
import { easedForLockUps } from '../../../src/score/eased-for-lock-ups.ts';
import type { GripEvent } from '../../../src/score/live-measures.ts';
import type { RepScore } from '../../../src/score/rep-score.ts';
import { scoreLiveRun } from '../../../src/score/score-live-rep.ts';
import { stretchesOf } from '../../../src/score/stretches.ts';
import golden from '../../reference/live-score.json' with { type: 'json' };
import { bareZone, driveByHand, handLevel } from './hand-driven.ts';

function lockUp(fromS: number, toS: number | null, change: Partial<GripEvent> = {}): GripEvent {
  return { kind: 'lock-up', axle: 'front', fromM: -40, fromS, toM: -30, toS, ...change };
}

describe('stretchesOf', () => {
  test('joins what overlaps, in order, and ends what goes on with the run', () => {
    const events = [lockUp(2, null), lockUp(0.5, 0.9), lockUp(0.7, 1.2, { axle: 'rear' })];
    expect(stretchesOf(events, 2.5)).toEqual([
      { fromS: 0.5, toS: 1.2 },
      { fromS: 2, toS: 2.5 },
    ]);
  });
});

describe('easedForLockUps', () => {
  const flat = (level: number): Float64Array => new Float64Array(4000).fill(level);
  const rep = {
    startS: 0,
    raw: flat(0.3),
    levels: flat(0.3),
    threshold: { restingLevel: 0, onLevel: 0.03, offLevel: 0.015 },
    onset: 0,
  };
  const at = (levels: Float64Array, timeS: number): number => levels[Math.round(1000 * timeS)]!;

  test('less than the followed target counts as it, and is held to it again over 0.2 s', () => {
    const { levels } = easedForLockUps(rep, flat(0.5), [{ fromS: 1, toS: 1.5 }]);
    expect(at(levels, 0.7)).toBeCloseTo(0.3, 4);
    expect(at(levels, 1.4)).toBeCloseTo(0.5, 4);
    expect(at(levels, 1.75)).toBeCloseTo(0.5, 2);
    expect(at(levels, 1.9)).toBeCloseTo(0.4, 3);
    expect(at(levels, 2.3)).toBeCloseTo(0.3, 4);
  });

  test('more than the followed target stays more', () => {
    const { levels } = easedForLockUps(rep, flat(0.2), [{ fromS: 1, toS: 1.5 }]);
    expect(at(levels, 1.2)).toBeCloseTo(0.3, 9);
  });
});

describe('a lock-up on the straight', () => {
  const zone = bareZone();
  const base = golden.reps['straight release'].rep;
  const scored = (
    foot: (level: number, timeS: number) => number,
    events: LiveEvent[],
  ): RepScore => {
    const { run, record } = driveByHand(
      zone,
      (sM, timeS) => foot(handLevel(base, sM, timeS), timeS),
      golden.newtons_per_level,
      events,
    );
    return scoreLiveRun(record, run) as RepScore;
  };
  const ease = (level: number, timeS: number): number => {
    const dip = Math.exp(-(((timeS - 0.95) / 0.12) ** 2));
    return level * (1 - 0.5 * dip);
  };

  test('easing, re-applying and carrying on costs nothing', () => {
    const rep = scored(ease, [lockUp(0.7, 1.0)]);
    expect(rep.live).toMatchObject({ lockedS: 0 });
    expect(rep.reapplications).toBe(0);
    expect(rep.score).toBeGreaterThan(97);
  });

  test('the same dip without a lock-up is a re-application', () => {
    const rep = scored(ease, []);
    expect(rep.reapplications).toBe(1);
    expect(rep.parts.smooth).toBe(0.2);
  });

  // Locked from 0.7 to 1.5 s; 0.213 s to notice leaves 0.587 s: (0.8 - 0.587) / 0.75 = 0.284 of the smooth part.
  test('staying on costs, by the time beyond noticing', () => {
    const rep = scored((level) => level, [lockUp(0.7, 1.5)]);
    expect(rep.live!.lockedS).toBeCloseTo(0.587, 3);
    expect(rep.parts.smooth).toBeCloseTo(0.284, 2);
    expect(rep.live!.lockUps).toHaveLength(1);
  });

  test('both axles at once are locked once', () => {
    const both = [lockUp(0.7, 1.5), lockUp(0.8, 1.5, { axle: 'rear' })];
    expect(scored((level) => level, both).live!.lockedS).toBeCloseTo(0.587, 3);
  });

  test('wheels that the rail alone has locked in the corner are not the fault of the foot', () => {
    const rep = scored((level) => level, [lockUp(2.5, 3.5, { fromM: 30 })]);
    expect(rep.live).toMatchObject({ lockedS: 0 });
    expect(rep.parts.smooth).toBe(1);
  });

  test('with more than the target they are', () => {
    const rep = scored(
      (level, timeS) => level + (timeS > 1.9 ? 0.06 : 0),
      [lockUp(2.0, 3.2, { fromM: 20 })],
    );
    expect(rep.live!.lockedS).toBeGreaterThan(0.3);
  });
});

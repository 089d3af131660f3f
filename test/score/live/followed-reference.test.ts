import { describe, expect, test } from 'vitest';
import { followedReference } from '../../../src/score/followed-reference.ts';
import type { RepScore } from '../../../src/score/rep-score.ts';
import { scoreLiveRun } from '../../../src/score/score-live-rep.ts';
import type { Target } from '../../../src/target/target.ts';
import golden from '../../reference/live-score.json' with { type: 'json' };
import { bareZone, driveByHand, handLevel } from './hand-driven.ts';

const zone = bareZone();
const { run } = driveByHand(
  zone,
  (sM, timeS) => handLevel(golden.reps['straight release'].rep, sM, timeS),
  golden.newtons_per_level,
);
const { timeS, placeM, level } = run.columns;
const followed = { level, steeringRad: level, riseStep: 3000, metStep: 3200 };

test('the release starts at the place of the target', () => {
  const { marks } = followedReference(run, followed) as Target;
  const there = placeM[Math.round(1000 * (marks.startOfRelease + 3))]!;
  expect(there - zone.derived.keys.startOfRelease.sM).toBeGreaterThanOrEqual(0);
  expect(there - zone.derived.keys.startOfRelease.sM).toBeLessThan(0.1);
  expect(marks).toMatchObject({ rise: 0, peak: 0.2 });
  expect(placeM[Math.round(1000 * (marks.turnIn! + 3))]!).toBeCloseTo(0, 0);
});

test('or where an application that came after it has met its limit', () => {
  const metStep = timeS.findIndex((t) => t >= 2.5);
  const { marks } = followedReference(run, { ...followed, metStep }) as Target;
  expect(marks.startOfRelease).toBe(timeS[metStep]!);
});

test('reasons why there is nothing to release', () => {
  const faint = { ...followed, level: level.map((value) => 0.09 * value) };
  expect(followedReference(run, faint)).toBe('braked too late');
  expect(followedReference(run, { ...followed, metStep: null })).toBe('stopped before the release');
});

describe('anti-lock', () => {
  const work = { kind: 'anti-lock', axle: 'front', fromM: -30, toM: 10 } as const;
  const scored = (moreLevel: number): RepScore => {
    const turnInS = timeS[placeM.findIndex((sM) => sM >= 0)]!;
    const driven = driveByHand(
      zone,
      (sM, t) =>
        handLevel(golden.reps['straight release'].rep, sM, t) +
        (t > turnInS - 0.3 && t < turnInS + 0.6 ? moreLevel : 0),
      golden.newtons_per_level,
      [
        { ...work, fromS: turnInS - 0.5, toS: turnInS + 0.3 },
        { ...work, fromS: turnInS - 1, toS: turnInS - 0.8 },
      ],
    );
    return scoreLiveRun(driven.record, driven.run) as RepScore;
  };

  test('counts from turn-in on where the foot is above the target', () => {
    const { live, parts } = scored(0.06);
    expect(live!.antiLockTurnedS).toBeCloseTo(0.3, 2);
    // (0.8 - 0.3) / 0.7
    expect(parts.smooth).toBeLessThan(0.73);
  });

  test('is the target’s own where it is not', () => {
    expect(scored(0).live).toMatchObject({ antiLockTurnedS: 0 });
  });
});

import { describe, expect, test } from 'vitest';
import type { RepScore } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import type { Target } from '../../src/target/target.ts';
import { braking, type Curve, FALLS, record, SHAPE, shapeTarget } from './curves.ts';

const straight = { ...SHAPE, fall: FALLS.straight };
const target = shapeTarget(straight);
const level = braking(straight);

function score(rep: Curve, aim: Target = target, brakeStepLevel = 0): RepScore {
  const outcome = scoreRep({ ...record(rep), brakeStepLevel }, aim);
  if (outcome.kind !== 'scored') throw new Error(outcome.reason);
  return outcome;
}

/** A heavier foot passes the onset's threshold up to 1 ms sooner, which moves a crossing of this taper by 10 ms. */
const nearly = (share: number, expected: number): void =>
  expect(Math.abs(share - expected)).toBeLessThan(0.011 / WINDOW_S + 0.001);

/** From 50 ms before the start of release to 250 ms after brake off. */
const WINDOW_S = 0.05 + 1.5 + 0.25;

describe('share in the corridor', () => {
  test('is all of it 4 % too heavy, since 5 % are allowed', () => {
    expect(score((t) => 1.04 * level(t)).inCorridor).toBe(1);
  });

  test('10 % too heavy is where a tenth of the level is less than 1.5 %', () => {
    const insideS = (0.15 / 0.8) * 1.5 + 0.25;
    nearly(score((t) => 1.1 * level(t)).inCorridor, insideS / WINDOW_S);
  });

  test("goes by the target's own corridor", () => {
    const insideS = (0.6 / 0.8) * 1.5 + 0.25;
    const wide = { ...target, corridorAt: () => 0.06 };
    nearly(score((t) => 1.1 * level(t), wide).inCorridor, insideS / WINDOW_S);
  });
});

test('release and average error of a release that is 10 % light, by hand', () => {
  // A tenth of the level: 8 % on the plateau for 50 ms, then a straight line to 0 over 1.5 s.
  const { releaseErrorLevel, averageErrorLevel } = score((t) => 0.9 * level(t));
  expect(releaseErrorLevel).toBeCloseTo(0.08 * Math.sqrt((0.05 + 1.5 / 3) / WINDOW_S), 3);
  expect(averageErrorLevel).toBeCloseTo((-0.08 * (0.05 + 1.5 / 2)) / WINDOW_S, 3);
});

test('a re-application has to exceed three steps of a coarse sensor', () => {
  const bump: Curve = (t) => level(t) + 0.07 * Math.exp(-(((t - 1) / 0.05) ** 2));
  expect(score(bump).reapplications).toBe(1);
  expect(score(bump, target, 0.02).reapplications).toBe(0);
});

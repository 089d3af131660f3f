import { describe, expect, test } from 'vitest';
import { guessedIdea, ideaOfTarget } from '../../../src/input/virtual/braking-idea.ts';
import { planBraking } from '../../../src/input/virtual/braking-plan.ts';
import type { RepErrors } from '../../../src/input/virtual/rep-errors.ts';
import { RAMP } from '../../drill/drill-rig.ts';

const NO_ERRORS: RepErrors = {
  timingS: 0,
  timeRatio: 1,
  amountRatio: 1,
  riseRatio: 1,
  reapplication: null,
};
const idea = ideaOfTarget(RAMP);
/** RAMP rises to 0.8 in 0.1 s, starts to release at 0.6 s and is off at 1.4 s. */
const PLATEAU_END_S = 0.4;

const at = (change: Partial<RepErrors>, timeS: number) =>
  planBraking(idea, { ...NO_ERRORS, ...change }).levelAt(timeS);

describe('a plan', () => {
  test('without errors is the target', () => {
    for (let t = -0.1; t < 1.6; t += 0.01) expect(at({}, t)).toBeCloseTo(RAMP.level.at(t), 9);
  });

  test('that is late reaches every level of the release later', () => {
    expect(at({ timingS: 0.1 }, PLATEAU_END_S + 0.1)).toBeCloseTo(0.8, 9);
    expect(at({ timingS: 0.1 }, 1)).toBeCloseTo(RAMP.level.at(0.9), 9);
    expect(planBraking(idea, { ...NO_ERRORS, timingS: 0.1 }).endS).toBeCloseTo(1.5, 9);
  });

  test('that is quick comes off in less time from the same start', () => {
    expect(at({ timeRatio: 0.5 }, PLATEAU_END_S + 0.25)).toBeCloseTo(RAMP.level.at(0.9), 9);
    expect(planBraking(idea, { ...NO_ERRORS, timeRatio: 0.5 }).endS).toBeCloseTo(0.9, 9);
  });

  test('that is light is lighter all along', () => {
    expect(at({ amountRatio: 0.9 }, 0.3)).toBeCloseTo(0.72, 9);
    expect(at({ amountRatio: 0.9 }, 1.1)).toBeCloseTo(0.9 * RAMP.level.at(1.1), 9);
  });

  test('that hits slowly stretches the rise and leaves the release alone', () => {
    expect(at({ riseRatio: 2 }, 0.1)).toBeCloseTo(0.4, 9);
    expect(at({ riseRatio: 2 }, 0.9)).toBeCloseTo(RAMP.level.at(0.9), 9);
  });

  test('may go back up once, smoothly', () => {
    const reapplication = { atS: 0.2, lengthS: 0.4, heightLevel: 0.1 };
    expect(at({ reapplication }, PLATEAU_END_S + 0.4)).toBeCloseTo(RAMP.level.at(0.8) + 0.1, 9);
    expect(at({ reapplication }, PLATEAU_END_S + 0.2)).toBeCloseTo(RAMP.level.at(0.6), 9);
    expect(at({ reapplication }, PLATEAU_END_S + 0.6)).toBeCloseTo(RAMP.level.at(1), 9);
  });
});

test('an unknown corner is braked for by its type: up, held, straight off', () => {
  for (const cornerType of ['hairpin', 'fast-sweeper', 'no such corner']) {
    const guess = guessedIdea(cornerType);
    const peak = guess.levelAt(guess.startOfReleaseS);
    expect(guess.levelAt(0)).toBe(0);
    expect(peak).toBeGreaterThan(0.5);
    expect(guess.levelAt((guess.startOfReleaseS + guess.brakeOffS) / 2)).toBeCloseTo(peak / 2, 9);
    expect(guess.levelAt(guess.brakeOffS)).toBeCloseTo(0, 9);
  }
  expect(guessedIdea('hairpin').brakeOffS).not.toBe(guessedIdea('fast-sweeper').brakeOffS);
});

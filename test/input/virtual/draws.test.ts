import { expect, test } from 'vitest';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { ideaOfTarget } from '../../../src/input/virtual/braking-idea.ts';
import { errorDraw } from '../../../src/input/virtual/draw-errors.ts';
import { DRIVER_PRESETS, errorShare } from '../../../src/input/virtual/driver-preset.ts';
import { fairDraws } from '../../../src/input/virtual/fair-draws.ts';
import { RAMP } from '../../drill/drill-rig.ts';

test('every ten draws hold every tenth of the distribution once', () => {
  const draws = fairDraws(seededRandom(1));
  for (let block = 0; block < 5; block++) {
    const ten = Array.from({ length: 10 }, draws.uniform).sort((a, b) => a - b);
    ten.forEach((x, i) => {
      expect(x).toBeCloseTo(0.05 + i / 10, 9);
    });
  }
});

test('normal draws are the middles of tenths of the standard normal distribution', () => {
  const ten = Array.from({ length: 10 }, fairDraws(seededRandom(1)).normal);
  // z of 0.55, 0.65, 0.75, 0.85, 0.95: Abramowitz and Stegun, table 26.5
  const expected = [0.12566, 0.38532, 0.67449, 1.03643, 1.64485];
  const upper = ten.sort((a, b) => a - b).slice(5);
  for (const [i, z] of expected.entries()) expect(upper[i]).toBeCloseTo(z, 3);
});

const idea = ideaOfTarget(RAMP);

function meanRate(reps: number, feedback: 'shown' | 'hidden' | 'first-of-day'): number {
  const draw = errorDraw(DRIVER_PRESETS.novice, 3);
  const rates = Array.from({ length: 10 }, () => Math.log(draw(idea, reps, feedback).timeRatio));
  return rates.reduce((sum, x) => sum + x, 0) / 10;
}

test('practice takes errors away exponentially, never all of them', () => {
  const [first, later, latest] = [0, 60, 120].map((reps) => errorShare(reps));
  expect(first).toBe(1);
  expect((latest! - errorShare(1e6)) / (later! - errorShare(1e6))).toBeCloseTo(1 / Math.E, 9);
  expect(errorShare(1e6)).toBeGreaterThan(0);
  expect(meanRate(60, 'shown') / meanRate(0, 'shown')).toBeCloseTo(errorShare(60), 9);
});

test('errors grow without the own trace, and more without the target', () => {
  const errors = (['shown', 'hidden', 'first-of-day'] as const).map((f) => -meanRate(0, f));
  expect(errors[1]).toBeGreaterThan(errors[0]!);
  expect(errors[2]).toBeGreaterThan(1.2 * errors[1]!);
});

test('re-applications come in the preset’s share of ten reps', () => {
  const draw = errorDraw(DRIVER_PRESETS.novice, 9);
  const reps = Array.from({ length: 10 }, () => draw(idea, 0, 'shown').reapplication);
  expect(reps.filter((reapplication) => reapplication !== null)).toHaveLength(4);
});

import { describe, expect, test } from 'vitest';
import type { FinishedRep } from '../../../src/drill/drill-message.ts';
import { DRIVER_NAMES } from '../../../src/input/virtual/driver-preset.ts';
import { bundledTarget, driveVirtual, medianScore } from './virtual-drill.ts';

/**
 * Block medians of drivers of three abilities in a Monte-Carlo simulation of the score, which was run before and
 * apart from this driver: 93 (standard deviation of single reps 7), 74 (20) and 41 (31).
 */
const MEDIANS = { skilled: 93, club: 74, novice: 41 } as const;
const SEEDS = [1, 2];

describe.each(DRIVER_NAMES)('a %s driver on the bundled hairpin', (name) => {
  test('lands on the median score of the ability within 5, whatever the seed', async () => {
    for (const seed of SEEDS) {
      const reps = await driveVirtual(name, seed, { target: bundledTarget('hairpin') });
      expect(reps).toHaveLength(10);
      expect(reps.every(({ voided }) => voided === null)).toBe(true);
      expect(Math.abs(medianScore(reps) - MEDIANS[name]), `seed ${seed}`).toBeLessThanOrEqual(5);
      expect(medianLift(reps)).toBeCloseTo(0.1, 1);
      if (name !== 'skilled') expect(tooQuick(reps)).toBeGreaterThanOrEqual(3);
    }
  }, 120_000);
});

/** Throttle off to brake on, seconds, of the middle rep. */
function medianLift(reps: readonly FinishedRep[]): number {
  const lifts = reps.map(({ outcome }) => outcome?.side?.liftToHitS ?? Number.NaN);
  return lifts.sort((a, b) => a - b)[5]!;
}

/** Reps whose named cause is the habit that the preset gives its driver. */
function tooQuick(reps: readonly FinishedRep[]): number {
  const causes = reps.map(({ outcome }) => (outcome?.kind === 'scored' ? outcome.cause : null));
  return causes.filter((cause) => cause?.kind === 'rate' && cause.rateRatio < 0.95).length;
}

test('the three abilities stay apart on a harder and on an easier target', async () => {
  for (const id of ['fast-sweeper', 'double-apex']) {
    const target = bundledTarget(id);
    const medians: number[] = [];
    for (const name of DRIVER_NAMES)
      medians.push(medianScore(await driveVirtual(name, 1, { target })));
    console.log(`${id}: ${medians.map((median) => median.toFixed(0)).join(' ')}`);
    expect(medians[0], id).toBeGreaterThan(medians[1]! + 8);
    expect(medians[1], id).toBeGreaterThan(medians[2]! + 8);
  }
}, 120_000);

test('a novice gets better with practice', async () => {
  const reps = await driveVirtual('novice', 4, { target: bundledTarget('hairpin'), reps: 30 });
  expect(medianScore(reps.slice(20))).toBeGreaterThan(medianScore(reps.slice(0, 10)) + 5);
}, 120_000);

test('first-of-day reps on a target the driver never saw are worse than after it was shown', async () => {
  const target = bundledTarget('hairpin');
  const reps = await driveVirtual('skilled', 3, { target, repsInLife: 9, hoursSinceLastRep: 30 });
  const of = (phase: FinishedRep['phase']) => reps.filter((rep) => rep.phase === phase);
  expect(of('first-of-day')).toHaveLength(5);
  expect(of('first-of-day').every(({ feedback }) => feedback === 'first-of-day')).toBe(true);
  expect(of('block')).toHaveLength(10);
  expect(medianScore(of('first-of-day'))).toBeLessThan(medianScore(of('block')) - 8);
}, 120_000);

import { describe, expect, test } from 'vitest';
import { finalReleaseAt, levelAlong, phaseEnds } from '../../src/target/level-phases.ts';
import type { LevelPhases } from '../../src/target/target-spec.ts';

const PHASES: LevelPhases = {
  rise: { length: 0.2, shape: 'linear' },
  peakLevel: 0.8,
  hold: 0.3,
  bleed: { length: 0.5, toLevel: 0.6 },
  release: { length: 2, shape: { kind: 'linear' } },
};

test('phases follow each other', () => {
  expect(phaseEnds(PHASES)).toEqual({ rise: 0.2, hold: 0.5, bleed: 1, release: 3 });
});

describe('level along the run, by hand', () => {
  const level = levelAlong(PHASES);
  test.each([
    ['before the rise', -1, 0],
    ['half way up', 0.1, 0.4],
    ['at the peak', 0.2, 0.8],
    ['on the plateau', 0.4, 0.8],
    ['half way down the bleed', 0.75, 0.7],
    ['at the start of release', 1, 0.6],
    ['a quarter of the release', 1.5, 0.45],
    ['at brake off', 3, 0],
    ['after it', 9, 0],
  ])('%s', (_name, run, expected) => {
    expect(level(run)).toBeCloseTo(expected, 12);
  });
});

test('without a bleed the release leaves from the peak', () => {
  const level = levelAlong({ ...PHASES, bleed: null });
  expect(level(0.5)).toBeCloseTo(0.8, 12);
  expect(level(1.5)).toBeCloseTo(0.4, 12);
});

describe('the final release starts at a tenth of the level the release left from', () => {
  test('linear: nine tenths of the way', () => {
    expect(finalReleaseAt(PHASES)).toBeCloseTo(1 + 0.9 * 2, 9);
  });
  test('power law 2: where (1 - u)^2 is 0.1', () => {
    const release = { length: 2, shape: { kind: 'power-law', exponent: 2 } } as const;
    expect(finalReleaseAt({ ...PHASES, release })).toBeCloseTo(1 + (1 - Math.sqrt(0.1)) * 2, 9);
  });
});

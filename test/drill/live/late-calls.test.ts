import { describe, expect, test } from 'vitest';
import { laneTargets, valueAt } from '../../../src/drill/live/lane-targets.ts';
import { drawCall, possibleCalls } from '../../../src/drill/live/late-calls.ts';
import { bundledSheet, ZONE } from './live-bench.ts';

const CALLS = ['damp', 'yellow'] as const;
const drawn = (share: number, seed = 1) =>
  Array.from({ length: 400 }, (_, i) => drawCall(CALLS, share, seed, i + 1));

describe('late calls', () => {
  test('come in about their share of the attempts, each word as often, the same for a seed', () => {
    expect(drawn(0).every((word) => word === null)).toBe(true);
    expect(drawn(1).every((word) => word !== null)).toBe(true);
    const some = drawn(0.3);
    const count = (word: string | null) => some.filter((one) => one === word).length;
    // binomial, n = 400: four standard deviations are 37 around 120, and 29 around 60
    expect(Math.abs(400 - count(null) - 120)).toBeLessThan(37);
    for (const word of CALLS) expect(Math.abs(count(word) - 60)).toBeLessThan(29);
    expect(drawn(0.3)).toEqual(some);
    expect(drawn(0.3, 2)).not.toEqual(some);
  });

  test('none is drawn where the sheet answers to none', () => {
    expect(drawCall([], 1, 1, 1)).toBeNull();
  });

  test("are those of the sheet's variants but for the one that is driven anyway", () => {
    const sheet = bundledSheet('kiln-hairpin');
    expect(possibleCalls(sheet, 'qualifying')).toEqual(['defend', 'damp', 'yellow']);
    expect(possibleCalls(sheet, 'defending')).toEqual(['damp', 'yellow']);
  });
});

describe('a lane along the road', () => {
  const lane = { placeM: Float64Array.of(-10, 0, 20), value: Float64Array.of(1, 3, 2) };

  test('is straight between its points and level outside them', () => {
    expect(valueAt(lane, -50)).toBe(1);
    expect(valueAt(lane, -5)).toBe(2);
    expect(valueAt(lane, 0)).toBe(3);
    expect(valueAt(lane, 15)).toBe(2.25);
    expect(valueAt(lane, 99)).toBe(2);
    expect(valueAt({ placeM: new Float64Array(0), value: new Float64Array(0) }, 0)).toBeNull();
  });

  test('of the target begins at its brake point with the speed of the approach', () => {
    const { level, speedMps, corridorLevel } = laneTargets(ZONE.derived);
    expect(level.placeM[0]).toBe(ZONE.derived.zone.brakePointM);
    expect(speedMps.value[0]).toBeCloseTo(245 / 3.6, 6);
    // a corridor of 5 % of the level, 1.5 % of full scale at least
    const peak = level.value.indexOf(Math.max(...level.value));
    expect(corridorLevel.value[peak]).toBeCloseTo(0.05 * level.value[peak]!, 12);
    expect(corridorLevel.value.at(-1)).toBe(0.015);
  });
});

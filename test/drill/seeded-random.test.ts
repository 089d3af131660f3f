import { expect, test } from 'vitest';
import { gaussian, seededRandom, splitMix64, xoshiro128 } from '../../src/drill/seeded-random.ts';

test('xoshiro128** gives the outputs of its authors’ C program for the state 1, 2, 3, 4', () => {
  const next = xoshiro128([1, 2, 3, 4]);
  expect(Array.from({ length: 10 }, next)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
    4258142804,
  ]);
});

test('SplitMix64 gives the outputs listed by Rosetta Code for the seed 1234567', () => {
  const next = splitMix64(1234567n);
  expect(Array.from({ length: 5 }, next)).toEqual([
    6457827717110365317n,
    3203168211198807973n,
    9817491932198370423n,
    4593380528125082431n,
    16408922859458223821n,
  ]);
});

test('the same seed repeats itself, another seed or stream does not', () => {
  const draw = (seed: number, stream?: number) =>
    Array.from({ length: 8 }, seededRandom(seed, stream));
  expect(draw(7)).toEqual(draw(7));
  expect(draw(7)).not.toEqual(draw(8));
  expect(draw(7, 1)).not.toEqual(draw(7, 2));
});

test('uniform numbers fill [0, 1) and normal deviates have mean 0 and variance 1', () => {
  const random = seededRandom(3);
  const uniform = Array.from({ length: 20_000 }, random);
  expect(Math.min(...uniform)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...uniform)).toBeLessThan(1);
  // four standard errors of the mean of 20 000 draws: 4 * 0.2887 / 141.4
  expect(Math.abs(mean(uniform) - 0.5)).toBeLessThan(0.0082);
  const normal = Array.from({ length: 20_000 }, () => gaussian(random));
  expect(Math.abs(mean(normal))).toBeLessThan(0.0283);
  expect(Math.abs(mean(normal.map((x) => x * x)) - 1)).toBeLessThan(0.04);
});

function mean(values: readonly number[]): number {
  return values.reduce((sum, x) => sum + x, 0) / values.length;
}

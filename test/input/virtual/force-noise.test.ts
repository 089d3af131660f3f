import { expect, test } from 'vitest';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { forceNoise } from '../../../src/input/virtual/force-noise.ts';

const noise = Array.from({ length: 200_000 }, forceNoise(seededRandom(11), 0.001));
const mean = noise.reduce((sum, x) => sum + x, 0) / noise.length;

function covariance(lag: number): number {
  let sum = 0;
  for (let i = lag; i < noise.length; i++) sum += (noise[i]! - mean) * (noise[i - lag]! - mean);
  return sum / (noise.length - lag);
}

test('is 2.7 % of the force (Kudzia et al. 2022) and a little tremor', () => {
  // 200 s of noise remembered for 0.1 s: about 1000 independent values, two standard errors are 4.5 %
  expect(Math.sqrt(covariance(0))).toBeGreaterThan(0.027 * 0.93);
  expect(Math.sqrt(covariance(0))).toBeLessThan(0.027 * 1.07);
});

test('is slow: two poles that lose 3 dB at 2 Hz', () => {
  // the correlation of critically damped noise is (1 + w t) exp(-w t): 2/e after one time constant,
  // which is sqrt(sqrt 2 - 1) / (2 pi 2 Hz) = 51 ms
  expect(covariance(51) / covariance(0)).toBeCloseTo(2 / Math.E, 1);
  expect(Math.abs(covariance(1000) / covariance(0))).toBeLessThan(0.15);
});

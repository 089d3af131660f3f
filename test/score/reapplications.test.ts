import { expect, test } from 'vitest';
import { reapplications } from '../../src/score/reapplications.ts';

const of = (...levels: number[]): ReturnType<typeof reapplications> =>
  reapplications(Float64Array.from(levels), { from: 0, to: levels.length - 1 }, 0.015);

test('a steady release has none', () => {
  expect(of(0.8, 0.6, 0.4, 0.2, 0)).toEqual({ count: 0, share: 0, stepShare: 0.015 / 0.8 });
});

test('each turn from down to up counts once, and all rises add up', () => {
  const { count, share } = of(0.8, 0.5, 0.55, 0.6, 0.3, 0.34, 0.1);
  expect(count).toBe(2);
  expect(share).toBeCloseTo((0.1 + 0.04) / 0.7, 12);
});

test('a rise straight after the peak is no re-application, but is a rise', () => {
  const { count, share } = of(0.6, 0.7, 0.3);
  expect(count).toBe(0);
  expect(share).toBeCloseTo(0.1 / 0.3, 12);
});

test('movements below the hysteresis are not seen', () => {
  expect(of(0.8, 0.5, 0.51, 0.5, 0.51, 0.3)).toEqual({ count: 0, share: 0, stepShare: 0.03 });
});

test('many small steps up are seen once they add up', () => {
  const { count } = of(0.8, 0.5, 0.508, 0.516, 0.524, 0.3);
  expect(count).toBe(1);
});

test('pumping without ever releasing is measured against the hysteresis', () => {
  const { count, share } = of(0.8, 0.7, 0.8, 0.7, 0.8);
  expect(count).toBe(2);
  expect(share).toBeCloseTo(0.2 / 0.015, 9);
});

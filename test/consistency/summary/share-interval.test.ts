import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shareInterval } from '../../../src/consistency/summary/share-interval.ts';

// scipy 1.17.1, stats.binomtest(hits, trials).proportion_ci(0.95, 'exact')
test.each([
  [8, 10, 0.4439045376923585, 0.9747892736731665],
  [9, 10, 0.5549838829718047, 0.9974714214555375],
  [10, 10, 0.6915028921812371, 1],
  [3, 10, 0.06673951117773447, 0.652452850060008],
  [0, 5, 0, 0.5218237501049814],
  [1, 7, 0.0036102968619008097, 0.5787231970431982],
])('%d of %d', (hits, trials, low, high) => {
  const interval = shareInterval(hits, trials);
  expect(interval.low).toBeCloseTo(low, 12);
  expect(interval.high).toBeCloseTo(high, 12);
  expect(interval.level).toBe(0.95);
});

test('mirrors, holds the share itself, and is narrower at a lower level', () => {
  const counts = fc
    .integer({ min: 1, max: 200 })
    .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));
  fc.assert(
    fc.property(counts, ([hits, trials]) => {
      const { low, high } = shareInterval(hits, trials);
      const mirrored = shareInterval(trials - hits, trials);
      expect(mirrored.low).toBeCloseTo(1 - high, 10);
      expect(low).toBeLessThanOrEqual(hits / trials);
      expect(high).toBeGreaterThanOrEqual(hits / trials);
      expect(shareInterval(hits, trials, 0.8).low).toBeGreaterThanOrEqual(low);
    }),
  );
});

import { describe, expect, test } from 'vitest';
import { roadTiming, shortestGapS } from '../../../src/drill/event/road-timing.ts';

/**
 * The drill itself takes 0.6 s after brake off, 0.3 s with the foot off, and 3 s of rolling to the brake point: 3.9 s. A
 * result is held back for 2.5 s and usually stands for 2.5 s.
 */
describe('the road between two zones', () => {
  test.each([
    { gapS: 20, showS: 2.5, restS: 11.1 },
    { gapS: 8.9, showS: 2.5, restS: 0 },
    { gapS: 7.4, showS: 1, restS: 0 },
    { gapS: 6.4, showS: 0, restS: 0 },
    { gapS: 3, showS: 0, restS: 0 },
  ])('of $gapS s', ({ gapS, showS, restS }) => {
    const timing = roadTiming(gapS, 2.5, { showS: 2.5 });
    expect(timing.showS).toBeCloseTo(showS, 9);
    expect(timing.restS).toBeCloseTo(restS, 9);
  });

  test('a result that waits for a rating takes its time', () => {
    const timing = roadTiming(12, 4, { showS: 2.5 });
    expect(timing.showS + timing.restS).toBeCloseTo(12 - 3.9 - 4, 9);
  });
});

test('the least road', () => {
  expect(shortestGapS({ holdS: 2.5 })).toBeCloseTo(6.4, 9);
});

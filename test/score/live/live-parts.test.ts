import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type LiveErrors,
  liveParts,
  livePointsLost,
  liveScoreOf,
} from '../../../src/score/live-parts.ts';
import { scoreOf, scoreParts } from '../../../src/score/score-parts.ts';

const GOOD: LiveErrors = {
  releaseErrorLevel: 0,
  onOffErrorLevel: 0.1,
  peakError: 0,
  riseErrorS: 0,
  reapplied: 0,
  rateRatio: 1,
  brakePointErrorS: 0,
  lockedS: 0,
  antiLockTurnedS: 0,
};

const share = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 1, noNaN: true }));
const parts = fc.record({
  release: share,
  hit: fc.double({ min: 0.2, max: 1, noNaN: true }),
  smooth: fc.double({ min: 0.2, max: 1, noNaN: true }),
  brakePoint: share,
});

describe('liveParts', () => {
  // Brake point: full marks within 0.05 s, none from 0.25 s on, linear between.
  test.each([
    [0, 1],
    [0.05, 1],
    [-0.05, 1],
    [0.15, 0.5],
    [-0.2, 0.25],
    [0.25, 0],
    [-9, 0],
  ])('brake point %f s off: %f', (brakePointErrorS, wanted) => {
    expect(liveParts({ ...GOOD, brakePointErrorS }).brakePoint).toBeCloseTo(wanted, 12);
  });

  // Locked: full marks within 0.05 s beyond noticing, none from 0.8 s on, and no part below 0.2.
  test.each([
    [0.05, 1],
    [0.425, 0.5],
    [0.7, 0.2],
    [3, 0.2],
  ])('wheels locked for %f s: smooth %f', (lockedS, wanted) => {
    expect(liveParts({ ...GOOD, lockedS }).smooth).toBeCloseTo(wanted, 12);
  });

  test.each([
    [0.1, 1],
    [0.45, 0.5],
    [2, 0.2],
  ])('anti-lock for %f s after turn-in: smooth %f', (antiLockTurnedS, wanted) => {
    expect(liveParts({ ...GOOD, antiLockTurnedS }).smooth).toBeCloseTo(wanted, 12);
  });

  test('the worst of the smooth part decides', () => {
    const errors = { ...GOOD, reapplied: 0.13, lockedS: 0.2, antiLockTurnedS: 0.2 };
    expect(liveParts(errors).smooth).toBeCloseTo(0.5, 12);
  });

  test('without a live fault the parts are those of version 1', () => {
    const errors = { ...GOOD, releaseErrorLevel: 0.05, peakError: 0.1, rateRatio: 3 };
    expect(liveParts(errors)).toEqual({ ...scoreParts(errors), brakePoint: 1 });
  });

  test('an on/off foot earns nothing, however little there is to release', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.2, noNaN: true }), (onOffErrorLevel) => {
        const errors = { ...GOOD, onOffErrorLevel, releaseErrorLevel: onOffErrorLevel };
        return liveParts(errors).release === 0;
      }),
    );
  });
});

describe('liveScoreOf', () => {
  test('the brake point takes a tenth at most, and nothing else', () => {
    fc.assert(
      fc.property(parts, (some) => {
        const best = liveScoreOf({ ...some, brakePoint: 1 });
        const worst = liveScoreOf({ ...some, brakePoint: 0 });
        expect(best).toBe(scoreOf(some));
        expect(worst).toBeCloseTo(0.9 * best, 9);
        expect(best - worst).toBeLessThanOrEqual(10 + 1e-9);
      }),
    );
  });

  test('a brake point that is endlessly off leaves 90 points to a perfect rep', () => {
    const off = liveParts({ ...GOOD, brakePointErrorS: Number.POSITIVE_INFINITY });
    expect(liveScoreOf(off)).toBeCloseTo(90, 12);
  });
});

describe('livePointsLost', () => {
  test('adds up to what is missing, at most 10 for the brake point', () => {
    fc.assert(
      fc.property(parts, (some) => {
        const { release, hit, smooth, brakePoint } = livePointsLost(some);
        const missing = 100 - liveScoreOf(some);
        expect(release + hit + smooth + brakePoint).toBeCloseTo(missing, 9);
        for (const lost of [release, hit, smooth, brakePoint])
          expect(lost).toBeGreaterThanOrEqual(0);
        expect(brakePoint).toBeLessThanOrEqual(10 + 1e-9);
      }),
    );
  });

  // 100 x 0.9 x 0.5^0.55 = 61.47: 38.53 lost, ln(1/0.9) = 0.10536 of 0.10536 + 0.55 ln 2 = 0.48659.
  test('shares by logarithm', () => {
    const lost = livePointsLost({ release: 0.5, hit: 1, smooth: 1, brakePoint: 0 });
    expect(lost.brakePoint).toBeCloseTo((38.5283 * 0.105361) / 0.486592, 3);
    expect(lost.release).toBeCloseTo((38.5283 * 0.381231) / 0.486592, 3);
  });

  test('nothing lost, nothing to share', () => {
    const none = { release: 1, hit: 1, smooth: 1, brakePoint: 1 };
    expect(livePointsLost(none)).toEqual({ release: 0, hit: 0, smooth: 0, brakePoint: 0 });
  });

  test('no release is no score, and all of it lost there', () => {
    const lost = livePointsLost({ release: 0, hit: 0.5, smooth: 1, brakePoint: 0 });
    expect(lost).toEqual({ release: 100, hit: 0, smooth: 0, brakePoint: 0 });
  });
});

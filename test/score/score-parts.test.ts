import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { desirability } from '../../src/score/desirability.ts';
import { onOffError } from '../../src/score/on-off-error.ts';
import { pointsLost, scoreOf, scoreParts } from '../../src/score/score-parts.ts';

const PERFECT = {
  releaseErrorLevel: 0,
  onOffErrorLevel: 0.14,
  peakError: 0,
  riseErrorS: 0,
  reapplied: 0,
  rateRatio: 1,
};

describe('desirability', () => {
  test.each([
    [0, 1],
    [0.03, 1],
    [0.165, 0.5],
    [0.3, 0],
    [9, 0],
  ])('of %s between 0.03 and 0.3 is %s', (value, expected) => {
    expect(desirability(value, { full: 0.03, none: 0.3 })).toBeCloseTo(expected, 12);
  });

  test('with limits that cross is all or nothing', () => {
    expect(desirability(0.01, { full: 0.012, none: 0.005 })).toBe(1);
    expect(desirability(0.02, { full: 0.012, none: 0.005 })).toBe(0);
  });
});

describe('scoreParts', () => {
  test('the release earns full marks to 1.2 % and nothing from 0.9 of the on/off error', () => {
    const release = (releaseErrorLevel: number): number =>
      scoreParts({ ...PERFECT, releaseErrorLevel }).release;
    expect(release(0.012)).toBe(1);
    expect(release((0.012 + 0.126) / 2)).toBeCloseTo(0.5, 12);
    expect(release(0.1260001)).toBe(0);
  });

  test('the hit is the worse of peak and rise, either way, but never under a fifth', () => {
    const hit = (peakError: number, riseErrorS: number): number =>
      scoreParts({ ...PERFECT, peakError, riseErrorS }).hit;
    expect(hit(-0.165, 0)).toBeCloseTo(0.5, 12);
    expect(hit(0.165, 0.115)).toBeCloseTo(0.5, 12);
    expect(hit(0, -0.115)).toBeCloseTo(0.5, 12);
    expect(hit(1, 0)).toBe(0.2);
  });

  test('smooth is the worse of re-application and rate, but never under a fifth', () => {
    const smooth = (reapplied: number, rateRatio: number | null): number =>
      scoreParts({ ...PERFECT, reapplied, rateRatio }).smooth;
    expect(smooth(0.13, 1)).toBeCloseTo(0.5, 12);
    expect(smooth(0, 4)).toBeCloseTo(0.5, 12);
    expect(smooth(0.13, null)).toBeCloseTo(0.5, 12);
    expect(smooth(0, null)).toBe(1);
    expect(smooth(1, 20)).toBe(0.2);
  });
});

describe('scoreOf', () => {
  test('is the weighted geometric mean', () => {
    expect(scoreOf({ release: 0.5, hit: 1, smooth: 1 })).toBeCloseTo(68.302, 3);
    expect(scoreOf({ release: 1, hit: 0.2, smooth: 1 })).toBeCloseTo(66.874, 3);
    expect(scoreOf({ release: 1, hit: 1, smooth: 0.2 })).toBeCloseTo(72.478, 3);
    expect(scoreOf({ release: 0, hit: 1, smooth: 1 })).toBe(0);
  });
});

describe('pointsLost', () => {
  test('of a lone fault are all its own', () => {
    expect(pointsLost({ release: 0.5, hit: 1, smooth: 1 })).toEqual({
      release: expect.closeTo(31.698, 3),
      hit: 0,
      smooth: 0,
    });
  });

  test('of a release worth nothing are a hundred', () => {
    expect(pointsLost({ release: 0, hit: 0.2, smooth: 0.2 })).toEqual({
      release: 100,
      hit: 0,
      smooth: 0,
    });
  });

  test('stay numbers for a release next to nothing', () => {
    const lost = pointsLost({ release: Number.MIN_VALUE, hit: 1, smooth: 1 });
    expect(lost.release).toBeCloseTo(100, 6);
    expect([lost.hit, lost.smooth]).toEqual([0, 0]);
  });

  test('of a perfect rep are none', () => {
    expect(pointsLost({ release: 1, hit: 1, smooth: 1 })).toEqual({
      release: 0,
      hit: 0,
      smooth: 0,
    });
  });

  test('always add up', () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, (release, hit, smooth) => {
        const parts = { release, hit, smooth };
        const lost = pointsLost(parts);
        expect(lost.release + lost.hit + lost.smooth).toBeCloseTo(100 - scoreOf(parts), 9);
      }),
    );
  });
});

describe('onOffError', () => {
  test('of a constant is nothing', () => {
    expect(onOffError(new Float64Array(1001).fill(0.7))).toBeCloseTo(0, 9);
  });

  test('of a straight line from 1 to 0 is the root of 1/3 - 8/27', () => {
    // Mean up to x is 1 - x/2; what it saves, x (1 - x/2)^2, is largest at x = 2/3: 8/27 of a total of 1/3.
    const line = Float64Array.from({ length: 30001 }, (_, i) => 1 - i / 30000);
    expect(onOffError(line)).toBeCloseTo(Math.sqrt(1 / 3 - 8 / 27), 4);
  });

  test('is beaten by no constant and no switch', () => {
    const levels = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: 11,
      maxLength: 60,
    });
    fc.assert(
      fc.property(
        levels,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.nat(10),
        (values, constant, tenth) => {
          const held = 5 * Math.floor((tenth * values.length) / 50) + 1;
          const squares = values.map((v, i) => (v - (i < held ? constant : 0)) ** 2);
          const error = Math.sqrt(squares.reduce((a, b) => a + b, 0) / values.length);
          expect(onOffError(Float64Array.from(values))).toBeLessThanOrEqual(error + 1e-12);
        },
      ),
    );
  });
});

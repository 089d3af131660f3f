import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ReleaseShape, releaseShare } from '../../src/target/release-shape.ts';
import { RISE_SHAPES, riseShare } from '../../src/target/rise-shape.ts';

/** Mean over 0..1 by the midpoint rule. */
function mean(f: (u: number) => number): number {
  const n = 200_000;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += f((i + 0.5) / n);
  return sum / n;
}

describe('share of the full-level area that a release keeps, against the closed form', () => {
  test.each<[string, ReleaseShape, number]>([
    ['linear: 1/2', { kind: 'linear' }, 0.5],
    ['square root: 2/3', { kind: 'power-law', exponent: 0.5 }, 0.666667],
    ['power 1.6: 1/2.6', { kind: 'power-law', exponent: 1.6 }, 0.384615],
    ['raised cosine: 1/2', { kind: 'raised-cosine' }, 0.5],
    ['exponential, 3 e-folds: 1/3 - 1/(e^3 - 1)', { kind: 'exponential', eFolds: 3 }, 0.280936],
    [
      'corner at (0.25, 0.4): two trapezia',
      { kind: 'two-stage', corner: { x: 0.25, y: 0.4 } },
      0.325,
    ],
    ['knots on the straight line', { kind: 'knots', knots: [{ x: 0.3, y: 0.7 }] }, 0.5],
  ])('%s', (_name, shape, expected) => {
    expect(mean(releaseShare(shape))).toBeCloseTo(expected, 5);
  });
});

test('values by hand', () => {
  expect(releaseShare({ kind: 'power-law', exponent: 2 })(0.3)).toBeCloseTo(0.49, 12);
  expect(releaseShare({ kind: 'raised-cosine' })(1 / 3)).toBeCloseTo(0.75, 12);
  // (e^-1 - e^-2) / (1 - e^-2) = 1 / (e + 1)
  expect(releaseShare({ kind: 'exponential', eFolds: 2 })(0.5)).toBeCloseTo(0.268941421, 9);
  const corner = releaseShare({ kind: 'two-stage', corner: { x: 0.4, y: 0.3 } });
  expect([corner(0.2), corner(0.4), corner(0.7)].map((y) => Number(y.toFixed(12)))).toEqual([
    0.65, 0.3, 0.15,
  ]);
});

test('rise shapes by hand at a quarter', () => {
  // Minimum jerk: 10/64 - 15/256 + 6/1024.
  expect(riseShare('minimum-jerk')(0.25)).toBeCloseTo(0.103515625, 12);
  expect(riseShare('linear')(0.25)).toBe(0.25);
  // (1 - cos 45 degrees) / 2
  expect(riseShare('raised-cosine')(0.25)).toBeCloseTo(0.146446609, 9);
});

test('a minimum-jerk rise starts and ends at rest', () => {
  const f = riseShare('minimum-jerk');
  const h = 1e-4;
  for (const end of [0, 1 - h]) {
    expect(Math.abs(f(end + h) - f(end)) / h).toBeLessThan(1e-6);
  }
});

const shapes = fc.oneof<fc.Arbitrary<ReleaseShape>[]>(
  fc.constant({ kind: 'linear' }),
  fc.constant({ kind: 'raised-cosine' }),
  fc.record({
    kind: fc.constant('power-law'),
    exponent: fc.double({ min: 0.3, max: 5, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('exponential'),
    eFolds: fc.double({ min: 0.5, max: 8, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('two-stage'),
    corner: fc.record({
      x: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      y: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
  }),
);

test('every release starts at 1, ends at 0 and never rises', () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const share = releaseShare(shape);
      expect(share(0)).toBeCloseTo(1, 12);
      expect(share(1)).toBeCloseTo(0, 12);
      for (let i = 1; i <= 200; i++)
        expect(share(i / 200)).toBeLessThanOrEqual(share((i - 1) / 200) + 1e-12);
    }),
  );
});

test.each(RISE_SHAPES)('%s rises from 0 to 1 and never falls', (shape) => {
  const share = riseShare(shape);
  expect(share(0)).toBeCloseTo(0, 12);
  expect(share(1)).toBeCloseTo(1, 12);
  for (let i = 1; i <= 200; i++)
    expect(share(i / 200)).toBeGreaterThanOrEqual(share((i - 1) / 200) - 1e-12);
});

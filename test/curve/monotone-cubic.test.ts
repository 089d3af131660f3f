import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { monotoneCubic, monotoneSlopes } from '../../src/curve/monotone-cubic.ts';

// Data set RPN 14 of Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980).
const RPN_14 = [
  [7.99, 0],
  [8.09, 2.76429e-5],
  [8.19, 4.37498e-2],
  [8.7, 0.169183],
  [9.2, 0.469428],
  [10, 0.94374],
  [12, 0.998636],
  [15, 0.999919],
  [20, 0.999994],
].map(([x, y]) => ({ x: x!, y: y! }));

describe('RPN 14 of Fritsch and Carlson (1980)', () => {
  // Slopes and values computed with SciPy 1.10.1, PchipInterpolator.
  test('slopes', () => {
    const expected = [
      0, 5.5250868e-4, 0.33587683, 0.34944917, 0.59695824, 0.060321846, 9.0039538e-4, 3.1424684e-5,
      0,
    ];
    const found = monotoneSlopes(RPN_14);
    found.forEach((slope, i) => {
      const tolerance = Math.max(1e-12, 1e-7 * expected[i]!);
      expect(Math.abs(slope - expected[i]!), `knot ${i}`).toBeLessThanOrEqual(tolerance);
    });
  });

  test.each([
    [8.05, 9.956e-6],
    [8.5, 0.116632577],
    [9.0, 0.337534327],
    [9.5, 0.685217945],
    [11, 0.986043363],
    [13, 0.999361822],
  ])('value at %f', (x, expected) => {
    expect(Math.abs(monotoneCubic(RPN_14)(x) - expected)).toBeLessThan(1e-9);
  });

  test('never falls and stays within the data', () => {
    const f = monotoneCubic(RPN_14);
    let before = 0;
    for (let i = 0; i <= 4000; i++) {
      const y = f(7.99 + (20 - 7.99) * (i / 4000));
      expect(y).toBeGreaterThanOrEqual(before);
      expect(y).toBeLessThanOrEqual(0.999994);
      before = y;
    }
  });
});

test('a straight line is reproduced', () => {
  const f = monotoneCubic([0, 0.3, 1, 4].map((x) => ({ x, y: 3 - 2 * x })));
  for (const x of [0.1, 0.3, 0.77, 2, 3.9]) expect(f(x)).toBeCloseTo(3 - 2 * x, 12);
});

test('two knots make a straight line, constant outside', () => {
  const f = monotoneCubic([
    { x: 1, y: 0.8 },
    { x: 3, y: 0.2 },
  ]);
  expect([f(0), f(1), f(2), f(3), f(9)].map((y) => Number(y.toFixed(12)))).toEqual([
    0.8, 0.8, 0.5, 0.2, 0.2,
  ]);
});

test('an end steeper than three secants is held back', () => {
  // By hand: parabola slope ((2+0.1)*0.01 - 1*(-10)) / 1.1 = 9.11, above 3 * 0.01.
  const slopes = monotoneSlopes([
    { x: 0, y: 0 },
    { x: 1, y: 0.01 },
    { x: 1.1, y: -0.99 },
  ]);
  expect(slopes[0]).toBeCloseTo(0.03, 12);
});

test('a knot above both neighbours is a summit: level there and nowhere higher', () => {
  const knots = [
    { x: 0, y: 0 },
    { x: 1, y: 1 },
    { x: 3, y: 0.2 },
  ];
  expect(monotoneSlopes(knots)[1]).toBe(0);
  const f = monotoneCubic(knots);
  for (let x = 0; x <= 3; x += 0.01) expect(f(x)).toBeLessThanOrEqual(1);
});

test('knots out of order are refused', () => {
  expect(() => monotoneCubic([{ x: 0, y: 1 }])).toThrow(RangeError);
  expect(() =>
    monotoneCubic([
      { x: 0, y: 1 },
      { x: 0, y: 0 },
    ]),
  ).toThrow(RangeError);
});

test('falling knots give a falling curve that passes through them', () => {
  const steps = fc.array(
    fc.record({
      dx: fc.double({ min: 0.01, max: 2, noNaN: true }),
      dy: fc.double({ min: 0, max: 0.5, noNaN: true }),
    }),
    { minLength: 1, maxLength: 12 },
  );
  fc.assert(
    fc.property(steps, (list) => {
      const knots = [{ x: 0, y: 1 }];
      for (const { dx, dy } of list) {
        const last = knots[knots.length - 1]!;
        knots.push({ x: last.x + dx, y: last.y - dy });
      }
      const f = monotoneCubic(knots);
      for (const { x, y } of knots) expect(f(x)).toBeCloseTo(y, 12);
      const end = knots[knots.length - 1]!.x;
      for (let i = 1; i <= 300; i++)
        expect(f((end * i) / 300)).toBeLessThanOrEqual(f((end * (i - 1)) / 300) + 1e-12);
    }),
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseSmoothing, penaltyFor } from '../../../src/target/learn/choose-smoothing.ts';
import { fallingFit } from '../../../src/target/learn/falling-fit.ts';
import { smoothingSpline } from '../../../src/target/learn/smoothing-spline.ts';

const VALUES = Float64Array.from([
  0.8, 0.78, 0.79, 0.71, 0.64, 0.6, 0.47, 0.41, 0.3, 0.22, 0.13, 0.02,
]);

describe('smoothing spline', () => {
  // scipy 1.17.1, scipy.interpolate.make_smoothing_spline(x, y, lam), which solves by B-splines.
  test.each([
    [
      1e-5,
      [
        0.799345095905, 0.782720962157, 0.786237868634, 0.711341567888, 0.642577736098,
        0.594794111343, 0.475394704616, 0.405968758818, 0.302410706427, 0.219274208034,
        0.129683048217, 0.020251231863,
      ],
    ],
    [
      1e-3,
      [
        0.807638810147, 0.789684416804, 0.762477143846, 0.714894976481, 0.651734571808,
        0.577160649993, 0.490505612254, 0.400954729136, 0.309336966492, 0.217537707627,
        0.123135618727, 0.024938796686,
      ],
    ],
    [
      0.1,
      [
        0.877511006999, 0.813602451676, 0.748862782196, 0.68230543009, 0.613208228535,
        0.541146856157, 0.466019849582, 0.388169386265, 0.308098650925, 0.22644950154,
        0.143835440267, 0.06079041577,
      ],
    ],
  ])('agrees with SciPy at a penalty of %d', (penalty, expected) => {
    const smooth = smoothingSpline(VALUES, 0.1, penalty);
    expected.forEach((value, i) => {
      expect(smooth[i]).toBeCloseTo(value, 9);
    });
  });

  test('without a penalty gives the values back, with a large one their straight line', () => {
    expect([...smoothingSpline(VALUES, 0.1, 0)]).toEqual([...VALUES]);
    // Ordinary least squares by hand: slope = sum (x - 5.5)(y - mean) / 143 per step.
    const mean = VALUES.reduce((a, b) => a + b) / 12;
    const slope = VALUES.reduce((sum, y, i) => sum + (i - 5.5) * (y - mean), 0) / 143;
    const line = smoothingSpline(VALUES, 0.1, 1e7);
    line.forEach((value, i) => {
      expect(value).toBeCloseTo(mean + slope * (i - 5.5), 5);
    });
  });

  test('lets a sine through at half its height at the frequency it is named by', () => {
    const stepS = 0.005;
    const sine = Float64Array.from({ length: 2001 }, (_, i) =>
      Math.sin(2 * Math.PI * 3 * i * stepS),
    );
    const smooth = smoothingSpline(sine, stepS, penaltyFor(3, stepS));
    for (let i = 800; i < 1200; i++) expect(smooth[i]).toBeCloseTo(sine[i]! / 2, 3);
  });
});

describe('choice of the smoothing', () => {
  test('is the one that NumPy and SciPy find by leaving out each rep in turn', () => {
    const curves = [
      [0.8, 0.8, 0.7, 0.5, 0.3, 0.1, 0],
      [0.78, 0.8, 0.74, 0.52, 0.28, 0.14, 0.01],
      [0.82, 0.79, 0.68, 0.47, 0.33, 0.09, 0],
      [0.79, 0.81, 0.71, 0.53, 0.27, 0.1, 0.02],
    ].map((levels) => Float64Array.from(levels));
    const chosen = chooseSmoothing(curves, 0.05);
    expect(chosen.halfHeightHz).toBeCloseTo(6.55499709574998, 9);
    expect(chosen.missLevel).toBeCloseTo(0.022664380404227056, 9);
    expect(chosen.penaltyS3).toBeCloseTo(6.950571380740448e-6, 14);
  });

  test('smooths more where reps are rougher', () => {
    const curve = Float64Array.from({ length: 200 }, (_, i) => 0.8 * (1 - i / 199) ** 1.3);
    const rough = (size: number) =>
      [1, 2, 3, 4].map((k) =>
        curve.map((level, i) => level + size * Math.sin(i * (1.1 + 0.37 * k) + k)),
      );
    expect(chooseSmoothing(rough(0.05), 0.005).halfHeightHz).toBeLessThan(
      chooseSmoothing(rough(0.0005), 0.005).halfHeightHz,
    );
  });
});

describe('falling fit', () => {
  test('pools neighbours that rise', () => {
    // By hand: 3 and 4 rise, mean 3.5; then 1, 2, 3 rise, mean 2; 0 falls.
    expect([...fallingFit(Float64Array.from([5, 3, 4, 1, 2, 3, 0]))]).toEqual([
      5, 3.5, 3.5, 2, 2, 2, 0,
    ]);
  });

  test('never rises, keeps the sum, and leaves what falls as it is', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1 }), (values) => {
        const fit = fallingFit(Float64Array.from(values));
        fit.forEach((value, i) => {
          expect(value).toBeLessThanOrEqual((fit[i - 1] ?? 50) + 1e-9);
        });
        const sum = (all: ArrayLike<number>): number => Array.from(all).reduce((a, b) => a + b, 0);
        expect(sum(fit)).toBeCloseTo(sum(values), 6);
        const falling = Float64Array.from(values).sort().reverse();
        expect([...fallingFit(falling)]).toEqual([...falling]);
      }),
    );
  });
});

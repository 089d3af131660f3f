import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chiSquare, chiSquareQuantile } from '../../../src/consistency/distribution/chi-square.ts';
import { fDistribution, fQuantile } from '../../../src/consistency/distribution/f-distribution.ts';
import { logGamma } from '../../../src/consistency/distribution/log-gamma.ts';
import { normalQuantile, normalUpper } from '../../../src/consistency/distribution/normal.ts';
import { studentQuantile } from '../../../src/consistency/distribution/student-t.ts';
import { expectRelative } from '../../close-to.ts';

// all values by SciPy 1.17

test.each([
  [0.1, 2.252712651734206],
  [0.5, 0.5723649429247001],
  [3.7, 1.4280723266653883],
  [10, 12.801827480081469],
  [171.3, 708.1149469],
  [5000.5, 37586.8849],
])('log gamma of %d', (x, expected) => expectRelative(logGamma(x), expected, 5e-8));

test('gamma of whole numbers is a factorial', () => {
  let logFactorial = 0;
  for (let n = 1; n < 170; n++) {
    expect(logGamma(n)).toBeCloseTo(logFactorial, 11);
    logFactorial += Math.log(n);
  }
});

describe('chi-square', () => {
  test.each([
    [0.5, 1, 0.5204998778130466],
    [3.84, 1, 0.9499564787512949],
    [10, 10, 0.5595067149347879],
    [120, 100, 0.9155933189063082],
    [5, 40.5, 2.05038230229108e-12],
  ])('below %d of %d degrees', (x, degrees, expected) =>
    expectRelative(chiSquare(x, degrees), expected, 1e-11),
  );

  test.each([
    [0.025, 9, 2.7003894999803584],
    [0.975, 9, 19.02276779864163],
    [0.025, 34, 19.806252939214588],
    [0.975, 4, 11.143286781877796],
    [0.95, 1000, 1074.679448803441],
  ])('%d of it, %d degrees', (share, degrees, expected) =>
    expectRelative(chiSquareQuantile(share, degrees), expected, 1e-11),
  );
});

describe('F', () => {
  test.each([
    [2, 5, 10, 0.8358050491002611],
    [0.3, 3, 4, 0.17510561075742245],
    [1.98, 34, 34, 0.9749069182923681],
    [1.1, 2000, 1500.5, 0.9753443278605489],
  ])('below %d of %d and %d degrees', (x, upper, lower, expected) =>
    expectRelative(fDistribution(x, upper, lower), expected, 1e-11),
  );

  test.each([
    [0.975, 34, 34, 1.981119274354752],
    [0.025, 34, 34, 0.5047651663101902],
    [0.975, 9, 25, 2.6766418068582314],
    [0.95, 1000, 900, 1.1130550665024663],
  ])('%d of it, %d and %d degrees', (share, upper, lower, expected) =>
    expectRelative(fQuantile(share, upper, lower), expected, 1e-11),
  );
});

describe('the normal distribution', () => {
  test.each([
    [0, 0.5],
    [1, 0.15865525393145707],
    [1.96, 0.024997895148220435],
    [3, 0.0013498980316300933],
    [6, 9.865876450376946e-10],
    [-2, 0.9772498680518208],
  ])('above %d', (x, expected) => expectRelative(normalUpper(x), expected, 1e-12));

  test.each([
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489004],
    [0.9999, 3.719016485455709],
    [0.01, -2.3263478740408408],
  ])('%d of it', (share, expected) => expectRelative(normalQuantile(share), expected, 1e-11));
});

test.each([
  [0.975, 4, 2.7764451051977934],
  [0.975, 19, 2.0930240544083087],
  [0.95, 1, 6.313751514675037],
  [0.9, 250, 1.2849470554222564],
  [0.025, 4, -2.7764451051977934],
])('%d of Student’s t, %d degrees', (share, degrees, expected) =>
  expectRelative(studentQuantile(share, degrees), expected, 1e-10),
);

test('a quantile is where the distribution function reaches the share', () => {
  const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const degrees = fc.double({ min: 1, max: 300, noNaN: true });
  fc.assert(
    fc.property(share, degrees, degrees, (p, a, b) => {
      expect(chiSquare(chiSquareQuantile(p, a), a)).toBeCloseTo(p, 11);
      expect(fDistribution(fQuantile(p, a, b), a, b)).toBeCloseTo(p, 11);
      expect(1 - normalUpper(normalQuantile(p))).toBeCloseTo(p, 11);
    }),
  );
});

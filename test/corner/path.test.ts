import { describe, expect, test } from 'vitest';
import { joinPath } from '../../src/corner/path.ts';
import { planView } from '../../src/corner/plan-view.ts';
import { expectRelative } from '../close-to.ts';

const clothoid = joinPath([
  { kind: 'clothoid', lengthM: 60, startCurvature: 0, endCurvature: 1 / 50 },
]);

describe('clothoid of 60 m into a radius of 50 m', () => {
  test('ends where the Fresnel integrals put it, at 34.3774677 degrees', () => {
    const end = planView(clothoid, 1).at(-1);
    expectRelative(end?.xM ?? 0, 57.8757024, 1e-8);
    expectRelative(end?.yM ?? 0, 11.694941, 1e-8);
    expectRelative(((end?.headingRad ?? 0) * 180) / Math.PI, 34.3774677, 1e-8);
  });
});

describe('unit clothoid, kappa = pi s: coordinates are C(s) and S(s) of Abramowitz and Stegun, table 7.7', () => {
  test.each([
    [0.5, 0.4923442259, 0.0647324329],
    [1, 0.7798934004, 0.4382591474],
    [1.5, 0.445261176, 0.6975049601],
    [2, 0.4882534061, 0.3434156784],
  ])('at %f', (length, c, s) => {
    const path = joinPath([
      { kind: 'clothoid', lengthM: length, startCurvature: 0, endCurvature: Math.PI * length },
    ]);
    const end = planView(path, 0.005).at(-1);
    expect(Math.abs((end?.xM ?? 0) - c)).toBeLessThan(1e-10);
    expect(Math.abs((end?.yM ?? 0) - s)).toBeLessThan(1e-10);
  });
});

test('a full circle closes', () => {
  const circle = joinPath([
    { kind: 'constant', lengthM: 2 * Math.PI * 30, startCurvature: 1 / 30, endCurvature: 1 / 30 },
  ]);
  const end = planView(circle, 1).at(-1);
  expect(end?.xM).toBeCloseTo(0, 8);
  expect(end?.yM).toBeCloseTo(0, 8);
  expect(end?.headingRad).toBeCloseTo(2 * Math.PI, 12);
});

test('smooth entry: half the curvature at half the length, no kink at the ends', () => {
  const path = joinPath([{ kind: 'smooth', lengthM: 60, startCurvature: 0, endCurvature: 0.02 }]);
  expect(path.curvatureAt(30)).toBeCloseTo(0.01, 12);
  expect(path.curvatureAt(0.01) / 0.01).toBeLessThan(1e-5);
  expect((0.02 - path.curvatureAt(59.99)) / 0.01).toBeLessThan(1e-5);
});

test('segments join in order and hold their ends outside', () => {
  const path = joinPath([
    { kind: 'constant', lengthM: 10, startCurvature: 0, endCurvature: 0 },
    { kind: 'clothoid', lengthM: 20, startCurvature: 0, endCurvature: -0.01 },
    { kind: 'constant', lengthM: 30, startCurvature: -0.01, endCurvature: -0.01 },
  ]);
  expect([-5, 5, 20, 45, 99].map((s) => path.curvatureAt(s))).toEqual([0, 0, -0.005, -0.01, -0.01]);
  expect(path.lengthM).toBe(60);
  expect(() => joinPath([])).toThrow(RangeError);
});

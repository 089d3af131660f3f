import { describe, expect, test } from 'vitest';
import { correctedInformation } from '../../../src/consistency/fit/corrected-information.ts';
import { practiceCurve } from '../../../src/consistency/fit/practice-curve.ts';
import { gaussian, seededRandom } from '../../../src/drill/seeded-random.ts';
import { expectRelative } from '../../close-to.ts';
import { times } from '../rep-measures.ts';

const PLACES = times(40, (i) => i + 1);
const ripple = (n: number): number => 0.4 * Math.sin(12.9898 * n);
const EXPONENTIAL = PLACES.map((n) => 6 + 9 * Math.exp(-0.12 * (n - 1)) + ripple(n));
const POWER = PLACES.map((n) => 6 + 9 * n ** -0.6 + ripple(n));

describe('forty points with a known ripple', () => {
  // both curves through both series by SciPy 1.10, curve_fit with the same bounds
  const near = (actual: number | null | undefined, expected: number): void =>
    expect(Math.abs(actual! - expected)).toBeLessThanOrEqual(1e-3);
  const fitOf = (values: readonly number[], family: string) =>
    practiceCurve(PLACES, values)!.fits.find((fit) => fit.family === family)!;

  test('an exponential is told from a power curve', () => {
    const found = practiceCurve(PLACES, EXPONENTIAL)!;
    expect(found.chosen?.family).toBe('exponential');
    near(found.plateau, 6.05667);
    near(found.chosen?.gain, 9.34334);
    near(found.chosen?.rate, 0.12724);
    near(found.chosen?.information, -96.555);
    expectRelative(found.chosen!.residualSquares, 2.847477, 1e-5);
    const other = fitOf(EXPONENTIAL, 'power');
    near(other.plateau, 0);
    near(other.gain, 17.02474);
    near(other.rate, 0.28552);
    near(other.information, -38.7637);
  });

  test('a power curve is told from an exponential', () => {
    const found = practiceCurve(PLACES, POWER)!;
    expect(found.chosen?.family).toBe('power');
    near(found.plateau, 5.88448);
    near(found.chosen?.gain, 9.42232);
    near(found.chosen?.rate, 0.58996);
    near(found.chosen?.information, -94.5708);
    const other = fitOf(POWER, 'exponential');
    near(other.plateau, 7.30247);
    near(other.gain, 7.2307);
    near(other.rate, 0.2729);
    near(other.information, -76.321);
  });
});

describe('a plateau', () => {
  test('is not shown before the twentieth point', () => {
    const first = practiceCurve(PLACES.slice(0, 19), EXPONENTIAL.slice(0, 19))!;
    expect([first.plateau, first.missingForPlateau]).toEqual([null, 1]);
    expect(first.chosen?.family).toBe('exponential');
    const second = practiceCurve(PLACES.slice(0, 20), EXPONENTIAL.slice(0, 20))!;
    expect(second.missingForPlateau).toBe(0);
    expect(second.plateau).not.toBeNull();
  });

  test('is not claimed where nothing falls', () => {
    const random = seededRandom(7);
    const noise = PLACES.map(() => 5 + gaussian(random));
    const found = practiceCurve(PLACES, noise)!;
    expect(found.chosen?.family).toBe('constant');
    expect(found.plateau).toBeNull();
    const rising = practiceCurve(
      PLACES,
      PLACES.map((n) => n + ripple(n)),
    )!;
    expect(rising.chosen?.family).toBe('constant');
  });

  test('is not claimed where two curves fit about as well', () => {
    const random = seededRandom(11);
    const short = times(20, (i) => 6 + 4 * Math.exp(-0.3 * i) + gaussian(random));
    const found = practiceCurve(PLACES.slice(0, 20), short)!;
    expect(found.fits[1]!.information - found.fits[0]!.information).toBeLessThan(2);
    expect([found.chosen, found.plateau]).toEqual([null, null]);
  });
});

test('fewer than six points have no curve; points without noise have the simplest', () => {
  expect(practiceCurve([1, 2, 3, 4, 5], [5, 4, 3, 2, 1])).toBeNull();
  const still = times(8, () => 3);
  expect(practiceCurve(PLACES.slice(0, 8), still)?.chosen?.family).toBe('constant');
  const falling = times(8, (i) => 2 + 3 * Math.exp(-0.5 * i));
  const found = practiceCurve(PLACES.slice(0, 8), falling)?.chosen;
  expect(found?.family).toBe('exponential');
  expect(found?.rate).toBeCloseTo(0.5, 7);
  expect(
    practiceCurve(
      PLACES.slice(0, 8),
      times(8, () => 0),
    )?.chosen?.family,
  ).toBe('constant');
});

test('the criterion by hand', () => {
  // 10 ln(20 / 10) + 2 * 3 + 2 * 3 * 4 / (10 - 4)
  expect(correctedInformation(20, 10, 2)).toBeCloseTo(10 * Math.log(2) + 10, 12);
  expect(correctedInformation(20, 4, 2)).toBeNull();
  expect(correctedInformation(0, 10, 2)).toBeNull();
});

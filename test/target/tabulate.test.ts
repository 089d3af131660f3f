import { describe, expect, test } from 'vitest';
import { TABLE_TOLERANCE, tabulate } from '../../src/target/tabulate.ts';

/** Largest difference at places that no uniform grid of the table hits. */
function largestError(
  f: (x: number) => number,
  at: (x: number) => number,
  start: number,
  end: number,
): number {
  let largest = 0;
  for (let i = 0; i < 99991; i++) {
    const x = start + ((end - start) * (i + Math.SQRT1_2)) / 99991;
    largest = Math.max(largest, Math.abs(f(x) - at(x)));
  }
  return largest;
}

describe('the table stays within its tolerance of the function', () => {
  test.each<[string, (x: number) => number, number, number]>([
    ['a taper', (x) => 0.8 * (1 - x / 1.5) ** 1.6, 0, 1.5],
    ['a quick rise and a corner', (x) => Math.min(1, x / 0.15, Math.max(0, (2 - x) / 1.8)), 0, 2],
    ['a corner a third of the way into a cell', (x) => Math.abs(x - 1 / 3), 0, 1],
    ['a rise within a thousandth of the whole', (x) => Math.min(1, x / 0.003), 0, 3],
    ['an arc', (x) => Math.sin(x), -3, 3],
    [
      'a bend to both sides about the middle of a cell',
      (x) => 6e4 * Math.min(1 / 512, Math.max(-1 / 512, x - 5 / 512)) ** 3,
      0,
      1,
    ],
  ])('%s', (_name, f, start, end) => {
    expect(largestError(f, tabulate(f, start, end).at, start, end)).toBeLessThan(TABLE_TOLERANCE);
  });

  test('a finer tolerance is kept too', () => {
    const curve = tabulate(Math.cos, 0, 3, 1e-7);
    expect(largestError(Math.cos, curve.at, 0, 3)).toBeLessThan(1e-7);
  });
});

test('the table is made when it is first asked for a value, and only then', () => {
  let asked = 0;
  const curve = tabulate(
    (x) => {
      asked++;
      return x * x;
    },
    0,
    1,
  );
  expect([curve.start, curve.end, asked]).toEqual([0, 1, 0]);
  expect(curve.at(0.5)).toBeCloseTo(0.25, 4);
  const first = asked;
  expect(first).toBeGreaterThan(256);
  expect(curve.at(0.25)).toBeCloseTo(0.0625, 4);
  expect(asked).toBe(first);
});

test('a corner is asked for at a few more places than a straight line', () => {
  let asked = 0;
  const counted = (f: (x: number) => number) => {
    asked = 0;
    const curve = tabulate(
      (x) => {
        asked++;
        return f(x);
      },
      0,
      1,
    );
    curve.at(0);
    return asked;
  };
  const straight = counted((x) => x);
  // Halving a cell of 1/512 some fourteen times brings a corner of 500 to 1 below half a ten-thousandth: four places each.
  expect(counted((x) => 500 * Math.abs(x - 1 / 3))).toBeLessThanOrEqual(straight + 4 * 16);
});

test('the ends are exact and the curve is constant outside them', () => {
  const { at, start, end } = tabulate(Math.exp, -0.3, 0.7);
  expect([start, end]).toEqual([-0.3, 0.7]);
  expect([at(-0.3), at(-9), at(0.7), at(9)]).toEqual(
    [-0.3, -0.3, 0.7, 0.7].map((x) => Math.exp(x)),
  );
});

test('an empty interval is refused', () => {
  expect(() => tabulate(Math.sin, 1, 1)).toThrow(RangeError);
  expect(() => tabulate(Math.sin, 0, Number.NaN)).toThrow(RangeError);
});

import { expect, test } from 'vitest';
import { localQuadratic } from '../../../src/corner/fit/local-quadratic.ts';
import { minimise } from '../../../src/corner/fit/minimise.ts';

/** 3 - 2 t + 5 t^2 on uneven times: at 0.4 s it is 3 with a slope of 2 (by hand). */
test('a parabola is itself, at uneven times, at the edges, and among few samples', () => {
  const timeS = Float64Array.of(0, 0.09, 0.22, 0.3, 0.41, 0.5, 0.64, 0.7, 0.83, 0.9);
  const values = timeS.map((t) => 3 - 2 * t + 5 * t * t);
  expect(localQuadratic(timeS, values, 0.4, 0.25).value).toBeCloseTo(3, 9);
  expect(localQuadratic(timeS, values, 0.4, 0.25).slope).toBeCloseTo(2, 9);
  expect(localQuadratic(timeS, values, 0, 0.01)).toMatchObject({
    value: expect.closeTo(3, 9),
    slope: expect.closeTo(-2, 9),
  });
  expect(localQuadratic(timeS, values, 0.9, 0.01).slope).toBeCloseTo(7, 9);
});

test('noise is averaged with the weights -3, 12, 17, 12, -3 over 35 (Savitzky and Golay, table I)', () => {
  const { value } = localQuadratic(
    Float64Array.of(-2, -1, 0, 1, 2),
    Float64Array.of(0, 1, 0, 1, 0),
    0,
    2,
  );
  expect(value).toBeCloseTo(24 / 35, 12);
});

test('the least of Rosenbrock’s valley is at (1, 1)', () => {
  const f = ([x, y]: readonly number[]): number => 100 * (y! - x! ** 2) ** 2 + (1 - x!) ** 2;
  const { at } = minimise(f, [-1.2, 1], [0.5, 0.5]);
  expect(at[0]).toBeCloseTo(1, 3);
  expect(at[1]).toBeCloseTo(1, 3);
});

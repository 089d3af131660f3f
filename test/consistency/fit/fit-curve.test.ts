import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitCurve } from '../../../src/consistency/fit/fit-curve.ts';
import { walkDown } from '../../../src/consistency/fit/levenberg-marquardt.ts';
import { standardErrors } from '../../../src/consistency/fit/standard-errors.ts';
import { expectRelative } from '../../close-to.ts';
import reference from '../../reference/nist-nonlinear.json' with { type: 'json' };
import { times } from '../rep-measures.ts';
import { startsAround } from './starts-around.ts';

type Model = (x: number, parameters: ArrayLike<number>) => number;

/** Reads a parameter. */
const at = (b: ArrayLike<number>, i: number): number => b[i] ?? Number.NaN;

/** As written in the files of the datasets. */
const MODELS: Readonly<Record<string, Model>> = {
  Misra1a: (x, b) => at(b, 0) * (1 - Math.exp(-at(b, 1) * x)),
  BoxBOD: (x, b) => at(b, 0) * (1 - Math.exp(-at(b, 1) * x)),
  Chwirut2: (x, b) => Math.exp(-at(b, 0) * x) / (at(b, 1) + at(b, 2) * x),
  DanWood: (x, b) => at(b, 0) * x ** at(b, 1),
  MGH09: (x, b) => (at(b, 0) * (x * x + x * at(b, 1))) / (x * x + x * at(b, 2) + at(b, 3)),
  MGH10: (x, b) => at(b, 0) * Math.exp(at(b, 1) / (x + at(b, 2))),
  MGH17: (x, b) =>
    at(b, 0) + at(b, 1) * Math.exp(-x * at(b, 3)) + at(b, 2) * Math.exp(-x * at(b, 4)),
  Rat42: (x, b) => at(b, 0) / (1 + Math.exp(at(b, 1) - at(b, 2) * x)),
};

describe.each(reference.sets)('$name of the NIST reference datasets', (set) => {
  const problem = { x: set.x, y: set.y, model: MODELS[set.name]! };

  test.each([1, 2])('from start %d', (number) => {
    const found = fitCurve(problem, startsAround(set.starts[number - 1]!, 40))!;
    expectRelative(found.residualSquares, set.residualSquares, 1e-8);
    for (const [i, value] of set.certified.entries())
      expectRelative(found.parameters[i]!, value, 1e-6);
  });

  test('standard errors', () => {
    const found = standardErrors(problem, set.certified)!;
    for (const [i, value] of set.standardErrors.entries()) expectRelative(found[i]!, value, 1e-6);
  });
});

test('one walk from the first start of BoxBOD ends in the known false solution, several do not', () => {
  const set = reference.sets.find(({ name }) => name === 'BoxBOD')!;
  const problem = { x: set.x, y: set.y, model: MODELS.BoxBOD! };
  expect(walkDown(problem, set.starts[0]!)!.residualSquares).toBeGreaterThan(9000);
  expect(fitCurve(problem, startsAround(set.starts[0]!, 40))!.residualSquares).toBeLessThan(1169);
});

describe('bounds', () => {
  const line: Model = (x, b) => at(b, 0) + at(b, 1) * x;

  test('hold a parameter and let the others find their best place', () => {
    const x = [0, 1, 2, 3];
    const y = [3, 2, 1, 0];
    const found = walkDown({ x, y, model: line, lower: [-9, -0.5], upper: [9, 9] }, [0, 1])!;
    // with the slope at -0.5 the best intercept is the mean of y + x / 2
    expect(found.parameters[1]).toBe(-0.5);
    expect(found.parameters[0]).toBeCloseTo(2.25, 9);
  });

  test('are never left, whatever the start', () => {
    const start = fc.tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 }));
    fc.assert(
      fc.property(start, (from) => {
        const x = times(10, (i) => i);
        const y = x.map((value) => 100 * Math.exp(-value));
        const model: Model = (t, b) => at(b, 0) * Math.exp(-at(b, 1) * t);
        const found = walkDown({ x, y, model, lower: [0, 0.1], upper: [50, 5] }, from)!;
        expect(found.parameters[0]).toBeGreaterThanOrEqual(0);
        expect(found.parameters[0]).toBeLessThanOrEqual(50);
        expect(found.parameters[1]).toBeGreaterThanOrEqual(0.1);
        expect(found.parameters[1]).toBeLessThanOrEqual(5);
      }),
    );
  });
});

test('a curve that is no number at any start has no fit', () => {
  expect(fitCurve({ x: [1], y: [1], model: () => Number.NaN }, [[1], [2]])).toBeNull();
});

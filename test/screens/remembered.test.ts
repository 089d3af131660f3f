import { describe, expect, test, vi } from 'vitest';
import { remembered } from '../../src/screens/remembered.ts';

const counted = () => {
  const compute = vi.fn((..._: readonly unknown[]) => ({}));
  return { compute, known: remembered(compute) };
};
const values = Float64Array.of(1, 2);

describe('the same arguments give the same result', () => {
  test.each([
    ['numbers and words', [1, 'a', null, Number.NaN], [1, 'a', null, Number.NaN]],
    ['one object', [values], [values]],
    ['objects of the same fields', [{ x: 1, values }], [{ x: 1, values }]],
  ])('%s', (_, first, second) => {
    const { compute, known } = counted();
    expect(known(...second)).toBe(known(...first));
    expect(compute).toHaveBeenCalledOnce();
  });
});

describe('other arguments are computed anew', () => {
  test.each([
    ['another number', [1, 2], [1, 3]],
    ['another field', [{ x: 1, y: 1 }], [{ x: 1, y: 2 }]],
    ['a field more', [{ x: 1 }], [{ x: 1, y: undefined }]],
    ['a field of another name', [{ x: undefined }], [{ y: undefined }]],
    ['a field that is an object of its own', [{ x: { y: 1 } }], [{ x: { y: 1 } }]],
    ['an argument fewer', [1, 2], [1]],
    ['an argument more', [1], [1, 2]],
    ['a copy of a list', [[1]], [[1]]],
    ['a copy of an array of numbers', [values], [values.slice()]],
  ])('%s', (_, first, second) => {
    const { compute, known } = counted();
    expect(known(...second)).not.toBe(known(...first));
    expect(compute).toHaveBeenCalledTimes(2);
  });
});

test('parts that take turns are all known, and what was not asked for in a while is given up', () => {
  const { compute, known } = counted();
  for (let round = 0; round < 3; round++) for (let part = 0; part < 8; part++) known(part);
  expect(compute).toHaveBeenCalledTimes(8);
  known(8);
  known(0);
  expect(compute).toHaveBeenCalledTimes(10);
});

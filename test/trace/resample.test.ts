import fc from 'fast-check';
import { expect, test } from 'vitest';
import { resample } from '../../src/trace/resample.ts';
import { trackOf } from './track-of.ts';

test('each value holds until the next one', () => {
  const stairs = trackOf([0, 1], [0.0025, 2], [0.004, 3]);
  expect([...resample(stairs, 0, 6, 1000)]).toEqual([1, 1, 1, 2, 3, 3]);
});

test('of two values at one time the later wins', () => {
  expect([...resample(trackOf([0, 1], [0.001, 2], [0.001, 3]), 0, 3, 1000)]).toEqual([1, 3, 3]);
});

test('before the first sample its value is taken', () => {
  expect([...resample(trackOf([0.002, 7], [0.003, 8]), 0, 4, 1000)]).toEqual([7, 7, 7, 8]);
});

test('a value that is no number is passed over', () => {
  const holes = trackOf([0, Number.NaN], [0.001, 1], [Number.NaN, 5], [0.002, Number.NaN]);
  expect([...resample(holes, 0, 4, 1000)]).toEqual([1, 1, 1, 1]);
});

test('a track without numbers is 0', () => {
  expect([...resample(trackOf(), 0, 2, 1000)]).toEqual([0, 0]);
  expect([...resample(trackOf([0, Number.NaN]), 0, 2, 1000)]).toEqual([0, 0]);
});

test('samples on the grid come back one for one, wherever the grid begins', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1000, max: 1000, noNaN: true }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 200 }),
      (startS, values) => {
        const even = trackOf(...values.map((value, i) => [startS + i / 1000, value] as const));
        expect([...resample(even, startS, values.length, 1000)]).toEqual(values);
      },
    ),
  );
});

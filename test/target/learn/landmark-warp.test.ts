import fc from 'fast-check';
import { expect, test } from 'vitest';
import { landmarkWarp } from '../../../src/target/learn/landmark-warp.ts';

const ascending = fc
  .array(fc.double({ min: 0.02, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 })
  .map(([a, b, c]) => [0, a!, a! + b!, a! + b! + c!]);

test('takes each landmark to the own one, and keeps the pace outside', () => {
  const warp = landmarkWarp([0, 0.5, 2], [0.1, 0.7, 1.9]);
  const expected = [-0.9, 0.1, 0.4, 0.7, 1.3, 1.9, 2.9];
  [-1, 0, 0.25, 0.5, 1.25, 2, 3].forEach((timeS, i) => {
    expect(warp(timeS)).toBeCloseTo(expected[i]!, 12);
  });
});

test('always rises, and is undone by the map the other way', () => {
  fc.assert(
    fc.property(
      ascending,
      ascending,
      fc.double({ min: -1, max: 4, noNaN: true }),
      fc.double({ min: 1e-3, max: 1, noNaN: true }),
      (common, own, timeS, furtherS) => {
        const warp = landmarkWarp(common, own);
        expect(warp(timeS + furtherS)).toBeGreaterThan(warp(timeS));
        expect(landmarkWarp(own, common)(warp(timeS))).toBeCloseTo(timeS, 9);
      },
    ),
  );
});

test('refuses landmarks that do not ascend', () => {
  expect(() => landmarkWarp([0, 1, 1], [0, 1, 2])).toThrow(RangeError);
  expect(() => landmarkWarp([0, 1], [0, 1, 2])).toThrow(RangeError);
  expect(() => landmarkWarp([0, 1, 2], [0, 2, 1])).toThrow(RangeError);
});

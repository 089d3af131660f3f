import { expect, test } from 'vitest';
import { valueAt } from '../../../src/screens/live/place-curve.ts';

const RAMP = { placeM: Float64Array.of(-20, 0, 10), value: Float64Array.of(0, 1, 0.5) };

test.each([
  [-30, 0],
  [-20, 0],
  [-15, 0.25],
  [0, 1],
  [8, 0.6],
  [10, 0.5],
  [40, 0.5],
])('between entries a value lies on the straight line: at %d m', (placeM, value) => {
  expect(valueAt(RAMP, placeM)).toBeCloseTo(value, 12);
});

test('nothing recorded counts as 0', () => {
  expect(valueAt({ placeM: new Float64Array(0), value: new Float64Array(0) }, 3)).toBe(0);
});

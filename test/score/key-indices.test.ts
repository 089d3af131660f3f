import { expect, test } from 'vitest';
import { plateauGain } from '../../src/score/key-indices.ts';

const TARGET = Float64Array.from([0, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0]);
/** The rep's level over the target's where there is one. */
const gainOf = (...ratios: readonly number[]): number | null =>
  plateauGain(Float64Array.from([0, ...ratios.map((ratio) => ratio / 2), 0]), TARGET, 1, 7);

test('how heavy a rep is on its plateau is the upper tercile: of seven the fifth, by hand', () => {
  expect(gainOf(0.7, 1.1, 0.9, 1.2, 0.8, 1, 1.3)).toBeCloseTo(1.1, 12);
});

test('neither a third of overshoot nor a release in the middle moves it', () => {
  expect(gainOf(1.5, 1.2, 1, 1, 1, 1, 1)).toBeCloseTo(1, 12);
  expect(gainOf(1, 1, 1, 1, 0.8, 0.6, 0.4)).toBeCloseTo(1, 12);
});

test('where the target asks for nothing there is none', () => {
  expect(plateauGain(new Float64Array(3).fill(0.4), new Float64Array(3), 0, 2)).toBeNull();
});

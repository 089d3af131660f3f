import { expect, test } from 'vitest';
import { spreadOf } from '../../src/drill/spread.ts';

test('is the functional standard deviation, computed independently in Python with the statistics module', () => {
  const reps = [
    [0, 40, 80, 60, 20, 0],
    [0, 44, 76, 62, 24, 2],
    [0, 38, 82, 55, 18, 0],
  ].map((levels) => Float64Array.from(levels));
  expect(spreadOf(reps)).toBeCloseTo(2.6562295750848715, 12);
});

test('keeps its digits on levels that hardly differ', () => {
  const level = (offset: number) => Float64Array.of(1e6 + offset, 1e6 + offset);
  expect(spreadOf([level(0.1), level(0.2), level(0.3)])).toBeCloseTo(0.1, 9);
});

test('needs three reps', () => {
  expect(spreadOf([Float64Array.of(1), Float64Array.of(2)])).toBeNull();
});

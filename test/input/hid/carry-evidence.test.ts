import { describe, expect, test } from 'vitest';
import { carryEvidence, isNextDigit } from '../../../src/input/hid/carry-evidence.ts';

test('a digit below carries when the count steps slowly, by binary addition', () => {
  // 0111, 0111, 1000, 1000, 0111, 0111: up and down by one, seen above the lowest three bits and in the third.
  const upper = Float64Array.of(0, 0, 1, 1, 0, 0);
  const third = Float64Array.of(1, 1, 0, 0, 1, 1);
  expect(carryEvidence(upper, third)).toEqual({ steps: 2, carries: 2 });
  const stuck = Float64Array.of(1, 1, 1, 1, 1, 1);
  expect(carryEvidence(upper, stuck)).toEqual({ steps: 2, carries: 0 });
  // A step that is not slow tells nothing.
  expect(carryEvidence(Float64Array.of(0, 1, 2, 3), third)).toEqual({ steps: 0, carries: 0 });
});

describe('the verdict', () => {
  test.each([
    ['four steps that all carry, in a restless digit', { steps: 4, carries: 4 }, false, 2, true],
    ['three that do', { steps: 3, carries: 3 }, false, 2, false],
    ['five of which one does not', { steps: 5, carries: 4 }, false, 2, false],
    ['two that do, in a quiet digit', { steps: 2, carries: 2 }, true, 2, true],
    // Chance carries at a root of half the steps: 5 of 50.
    ['fifty that carry like chance', { steps: 50, carries: 5 }, false, 8, false],
    ['fifty that carry often', { steps: 50, carries: 20 }, false, 8, true],
    ['too few to tell', { steps: 1, carries: 1 }, false, 8, null],
  ] as const)('on %s', (_, evidence, quiet, enough, verdict) => {
    expect(isNextDigit(evidence, quiet, enough)).toBe(verdict);
  });
});

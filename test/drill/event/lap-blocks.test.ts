import { describe, expect, test } from 'vitest';
import { lapBlocks } from '../../../src/drill/event/lap-blocks.ts';

const outline = (laps: number, outLap: readonly string[] | null, mostReps = 60) =>
  lapBlocks({ zones: ['a', 'b', 'c'], outLap, laps, mostReps }).map(
    ({ phase, order, reps }) => `${phase} ${order} ${reps.map(({ zone }) => zone).join('')}`,
  );

describe('laps', () => {
  test('one rep a zone, in lap order', () => {
    expect(outline(2, null)).toEqual(['block serial abcabc']);
  });

  test('the out-lap is the first of them', () => {
    expect(outline(3, ['x', 'y', 'z'])).toEqual(['first-of-day serial xyz', 'block serial abcabc']);
    expect(outline(1, ['x', 'y', 'z'])).toEqual(['first-of-day serial xyz']);
  });

  test('no block is longer than the leg may go on for, and none has half a lap', () => {
    expect(outline(5, null, 8)).toEqual([
      'block serial abcabc',
      'block serial abcabc',
      'block serial abc',
    ]);
    expect(outline(2, null, 2)).toEqual(['block serial abc', 'block serial abc']);
  });
});

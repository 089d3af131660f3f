import { describe, expect, test } from 'vitest';
import {
  firstRepSentence,
  hiddenSentence,
  hiddenVerdict,
} from '../../../src/drill/diagnosis/diagnosis-sentences.ts';
import type { FirstRepLoss } from '../../../src/drill/diagnosis/first-rep-loss.ts';
import type { ShownHidden } from '../../../src/drill/diagnosis/shown-hidden.ts';

const figures = { reps: 5, medianScore: 70, medianReleaseErrorLevel: 0.04 };

function against(shift: number, low: number, high: number): ShownHidden {
  const interval = { low, high, level: 0.968 };
  return { shown: figures, hidden: figures, difference: { shift, interval } };
}

describe('hidden reps against shown ones', () => {
  test.each([
    [0.02, 0.0004, 0.16, 'hidden or shown, no clear difference', '(0.0 to +16.0 % rms at 97 %)'],
    [0.004, -0.005, 0.027, 'hidden or shown, no clear difference', '(-0.5 to +2.7 % rms at 97 %)'],
    [0.012, 0.003, 0.027, 'hidden reps 1.2 % rms worse than shown', '(+0.3 to +2.7 % rms at 97 %)'],
    [
      -0.012,
      -0.02,
      -0.001,
      'hidden reps 1.2 % rms better than shown',
      '(-2.0 to -0.1 % rms at 97 %)',
    ],
  ])('by %d, between %d and %d', (shift, low, high, verdict, range) => {
    expect(hiddenVerdict(against(shift, low, high))).toBe(verdict);
    expect(hiddenSentence(against(shift, low, high))).toBe(`${verdict} ${range}`);
  });

  test('are not told of under three of either', () => {
    const few: ShownHidden = { shown: figures, hidden: figures, difference: null };
    expect([hiddenVerdict(few), hiddenSentence(few)]).toEqual(['', '']);
  });
});

describe('the first rep', () => {
  const loss = (scorePoints: number, beyondSpread: boolean | null): FirstRepLoss => ({
    scorePoints,
    releaseErrorLevel: null,
    beyondSpread,
    others: 9,
  });

  test.each([
    [7.4, true, 'first rep 7 points below the rest'],
    [-7.4, true, 'first rep 7 points above the rest'],
    [7.4, null, 'first rep 7 points below the rest'],
    [7.4, false, 'first rep within what reps differ'],
  ])('%d points off, beyond the spread: %s', (points, beyond, words) => {
    expect(firstRepSentence(loss(points, beyond))).toBe(words);
  });

  test('is not told of where there is none', () => expect(firstRepSentence(null)).toBe(''));
});

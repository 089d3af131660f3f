import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scheduledFeedback } from '../../../src/drill/feedback-schedule.ts';
import { planFeedback } from '../../../src/drill/plan/plan-feedback.ts';
import type { FeedbackRule } from '../../../src/drill/plan/practice-plan.ts';

const thinning = (
  counted: 'practice' | 'life',
  ...stages: readonly (readonly [number, number])[]
): FeedbackRule => ({
  kind: 'thinning',
  counted,
  stages: stages.map(([untilRep, shownShare]) => ({ untilRep, shownShare })),
});
const RULE = thinning('life', [5, 1], [20, 0.5], [Number.POSITIVE_INFINITY, 0.25]);
const rep = (
  number: number,
  { rule = RULE, seed = 1, most = 100, inPractice = 0, row = 0 } = {},
): string =>
  planFeedback(
    { feedback: rule, mostShownInARow: most },
    'block',
    { inLife: number, inPractice, shownInARow: row },
    seed,
  );
const shown = (from: number, to: number, seed: number): number =>
  Array.from({ length: to - from }, (_, i) => rep(from + i, { seed })).filter((f) => f === 'shown')
    .length;

test('the phases that are no block have feedback of their own', () => {
  const of = (phase: 'first-of-day' | 'warm-up' | 'carry-over') =>
    planFeedback(
      { feedback: RULE, mostShownInARow: 1 },
      phase,
      { inLife: 0, inPractice: 0, shownInARow: 9 },
      1,
    );
  expect(of('first-of-day')).toBe('first-of-day');
  expect(of('warm-up')).toBe('shown');
  expect(of('carry-over')).toBe('hidden');
});

describe('a stated thinning', () => {
  test('shows every rep of the first stage, every other of the second, every fourth of the last', () => {
    for (const seed of [1, 2, 3, 4]) {
      expect(shown(0, 5, seed)).toBe(5);
      for (let from = 5; from < 19; from++) expect(shown(from, from + 2, seed)).toBe(1);
      for (let from = 20; from < 40; from++) expect(shown(from, from + 4, seed)).toBe(1);
    }
  });

  test('in any run of a stage shows the stated share, to the nearest rep', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.nat({ max: 200 }),
        fc.integer({ min: 1, max: 60 }),
        fc.nat({ max: 1000 }),
        (share, from, length, seed) => {
          const rule = thinning('life', [Number.POSITIVE_INFINITY, share]);
          const run = Array.from({ length }, (_, i) => rep(from + i, { rule, seed }));
          const count = run.filter((feedback) => feedback === 'shown').length;
          expect(Math.abs(count - share * length)).toBeLessThan(1 + 1e-9);
        },
      ),
    );
  });

  test('the seed decides which', () => {
    const starts = Array.from({ length: 20 }, (_, seed) => rep(5, { seed }));
    expect(new Set(starts)).toEqual(new Set(['shown', 'hidden']));
  });

  test('counts the reps ever, or those of the practice', () => {
    const today = thinning('practice', [5, 1], [Number.POSITIVE_INFINITY, 0]);
    expect(rep(300, { rule: today, inPractice: 4 })).toBe('shown');
    expect(rep(300, { rule: today, inPractice: 5 })).toBe('hidden');
    const ever = thinning('life', [5, 1], [Number.POSITIVE_INFINITY, 0]);
    expect(rep(300, { rule: ever, inPractice: 4 })).toBe('hidden');
  });
});

test('never more shown in a row than the plan says', () => {
  expect(rep(0, { most: 3, row: 2 })).toBe('shown');
  expect(rep(0, { most: 3, row: 3 })).toBe('hidden');
});

test("without a rule of its own a plan follows the drill's", () => {
  const rule: FeedbackRule = { kind: 'scheduled' };
  for (let number = 0; number < 60; number++)
    expect(rep(number, { rule, seed: 7 })).toBe(scheduledFeedback(number, 7));
});

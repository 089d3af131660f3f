import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CornerForm } from '../../../src/consistency/tonight/corner-form.ts';
import { type CornerRanking, rankCorners } from '../../../src/consistency/tonight/rank-corners.ts';
import {
  type CornerTonight,
  reasonOf,
  whyFewer,
} from '../../../src/consistency/tonight/tonight-words.ts';

const form = (name: string, change: Partial<CornerForm> = {}): CornerForm => ({
  name,
  hiddenReps: 14,
  releaseErrorLevel: 0.061,
  spreadLevel: 0.021,
  spreadReps: 14,
  firstOfDayLossLevel: 0.012,
  firstOfDayReps: 5,
  lastDay: '2026-11-25',
  expectedErrorLevel: 0.094,
  ...change,
});
const corner = (name: string, change: Partial<CornerForm> = {}): CornerTonight => ({
  form: form(name, change),
  troubles: [],
  cause: null,
  newestReps: 10,
  timeLostS: null,
});
const rank = (...corners: CornerTonight[]): CornerRanking<CornerTonight> =>
  rankCorners(corners, (one) => one.form);
const names = ({ tonight }: CornerRanking<CornerTonight>) =>
  tonight.map((one) => one.corner.form.name);

describe('the order', () => {
  test('three at most, the largest expected error first', () => {
    const levels = { A: 0.05, B: 0.09, C: 0.07, D: 0.11 };
    const corners = Object.entries(levels).map(([name, expectedErrorLevel]) =>
      corner(name, { expectedErrorLevel }),
    );
    expect(names(rank(...corners))).toEqual(['D', 'B', 'C']);
  });

  test('a tie within half a percent: what was left alone for longest, then lap order', () => {
    const ranking = rank(
      corner('A', { expectedErrorLevel: 0.0709, lastDay: '2026-11-25' }),
      corner('B', { expectedErrorLevel: 0.0691, lastDay: '2026-11-20' }),
      corner('C', { expectedErrorLevel: 0.0715, lastDay: '2026-11-25' }),
      corner('D', { expectedErrorLevel: 0.05 }),
    );
    expect(names(ranking)).toEqual(['B', 'A', 'C']);
    expect(ranking.tonight.map(({ tiedWith }) => tiedWith?.form.name ?? null)).toEqual([
      'A',
      'C',
      null,
    ]);
  });

  test('a corner without reps enough is never ranked', () => {
    const ranking = rank(corner('A', { expectedErrorLevel: null }), corner('B'));
    expect(names(ranking)).toEqual(['B']);
    expect(ranking.notRanked.map((one) => one.form.name)).toEqual(['A']);
  });

  test('every corner is ranked, left out by place, or not ranked; none that is named is better than one left out', () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 9 }),
        (levels) => {
          const corners = levels.map((expectedErrorLevel, i) =>
            corner(`${i}`, { expectedErrorLevel }),
          );
          const { tonight, notRanked } = rank(...corners);
          const known = levels.filter((level) => level !== null).toSorted((a, b) => b - a);
          expect(notRanked).toHaveLength(levels.length - known.length);
          expect(tonight).toHaveLength(Math.min(3, known.length));
          tonight.forEach(({ corner: one }, i) => {
            expect(Math.abs(one.form.expectedErrorLevel! - known[i]!)).toBeLessThanOrEqual(0.005);
          });
        },
      ),
    );
  });
});

describe('the reason', () => {
  const reason = (one: CornerTonight, tiedWith: CornerTonight | null = null) =>
    reasonOf({ corner: one, tiedWith }, '2026-11-27');

  test('parts, what the reps share, time and rest', () => {
    const rest = { change: 'not told here', of: 10 };
    const troubles = [
      { part: 'slowest speed', words: '12 km/h too fast at the slowest point', reps: 7, ...rest },
      { part: 'hit', words: 'hit 14 % too light', reps: 6, ...rest },
    ] as const;
    const one = { ...corner('A'), troubles, timeLostS: 0.118 };
    expect(reason(one)).toBe(
      'a first lap is expected 9.4 % off: release error 6.1 % in 14 hidden reps, spread 2.1 %, first-of-day loss 1.2 %; 12 km/h too fast at the slowest point in 7 of the last 10 reps; hit 14 % too light in 6 of the last 10 reps; 0.12 s lost to the slowest point; 2 days not practised',
    );
  });

  test('what is not known or not lost is not told as a loss', () => {
    const one = corner('A', {
      firstOfDayLossLevel: null,
      firstOfDayReps: 2,
      lastDay: '2026-11-27',
    });
    expect(reason({ ...one, timeLostS: -0.1 })).toBe(
      'a first lap is expected 9.4 % off: release error 6.1 % in 14 hidden reps, spread 2.1 %, first-of-day loss not known (2 of 5 reps)',
    );
  });

  test('a tie and what decided it', () => {
    const last = { lastDay: '2026-11-26' };
    expect(reason(corner('A', last), corner('B', last))).toMatch(
      /; 1 day not practised; level with B, earlier in the lap$/,
    );
    expect(reason(corner('A'), corner('B', last))).toMatch(/level with B, left alone for longer$/);
  });
});

describe('why there are fewer', () => {
  const few = (name: string, hiddenReps: number, change: Partial<CornerForm> = {}) =>
    corner(name, { hiddenReps, spreadReps: hiddenReps, expectedErrorLevel: null, ...change });

  test('no guess where nothing can be ranked', () => {
    expect(whyFewer(rank(few('A', 7), few('B', 0, { lastDay: null })))).toBe(
      'Not enough reps to rank any corner: it takes 10 hidden reps, two or more in a practice. So far: A (7), B (0).',
    );
  });

  test('corners that are left out; nothing where all are ranked', () => {
    expect(whyFewer(rank(corner('A'), few('B', 12, { spreadReps: 9 })))).toBe(
      'Not enough reps to rank: it takes 10 hidden reps, two or more in a practice. Left out: B (9).',
    );
    expect(whyFewer(rank(corner('A')))).toBeNull();
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PracticeDay } from '../../src/consistency/practice-day.ts';
import { practiceDays } from '../../src/consistency/practice-days.ts';
import type { Conditions, RepMeasure } from '../../src/consistency/rep-measure.ts';
import { aMeasure, aVoid, CONDITIONS, repsOf } from './rep-measures.ts';

const daysOf = (reps: readonly RepMeasure[]): PracticeDay[] => practiceDays(repsOf(reps));

const withConditions = (changes: Partial<Conditions>, more: Partial<RepMeasure> = {}): RepMeasure =>
  aMeasure({ conditions: { ...CONDITIONS, ...changes }, ...more });

test('no reps, no days', () => expect(daysOf([])).toEqual([]));

describe('a new row', () => {
  test.each<[keyof Conditions, Conditions[keyof Conditions]]>([
    ['targetVersion', 'v-two'],
    ['scoreVersion', 2],
    ['source', 'virtual'],
    ['sensor', 'travel'],
    ['calibrationId', 'bead'],
    ['foot', 'right'],
    ['footwear', 'socks'],
    ['condition', 'wet'],
  ])('begins where %s changes, within a day too', (name, value) => {
    const days = daysOf([aMeasure(), withConditions({ [name]: value }), aMeasure()]);
    expect(days.map(({ reps, changed }) => [reps, changed])).toEqual([
      [1, []],
      [1, [name]],
      [1, [name]],
    ]);
  });

  test('begins with a new day, and remembers what changed overnight', () => {
    const days = daysOf([
      aMeasure(),
      aMeasure({ day: '2026-11-26' }),
      withConditions({ footwear: 'socks' }, { day: '2026-11-27' }),
    ]);
    expect(days.map(({ day, changed }) => [day, changed])).toEqual([
      ['2026-11-25', []],
      ['2026-11-26', []],
      ['2026-11-27', ['footwear']],
    ]);
  });

  test('does not begin at a void rep, which has no score version', () => {
    const days = daysOf([aVoid('aborted'), aMeasure(), aVoid('device lost'), aMeasure()]);
    expect(days).toHaveLength(1);
    expect(days[0]?.conditions).toEqual(CONDITIONS);
  });

  test('begins at a new score version even with a void rep between', () => {
    const days = daysOf([aMeasure(), aVoid('aborted'), withConditions({ scoreVersion: 2 })]);
    expect(days.map(({ conditions }) => conditions.scoreVersion)).toEqual([1, 2]);
  });
});

test('every rep is in exactly one row, and no row mixes conditions', () => {
  const letter = fc.constantFrom('x', 'y');
  const rep = fc
    .record({
      foot: letter,
      targetVersion: letter,
      day: fc.constantFrom('2026-01-01', '2026-01-02'),
    })
    .map(({ day, ...changes }) => withConditions(changes, { day }));
  fc.assert(
    fc.property(fc.array(rep, { maxLength: 30 }), (reps) => {
      const days = daysOf(reps);
      let at = 0;
      for (const day of days) {
        const rows = reps.slice(at, at + day.reps);
        at += day.reps;
        for (const one of rows)
          expect([one.day, one.conditions]).toEqual([day.day, day.conditions]);
      }
      expect(at).toBe(reps.length);
    }),
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Conditions, RepMeasure } from '../../src/consistency/rep-measure.ts';
import {
  targetProgress as progressOf,
  type TargetProgress,
} from '../../src/consistency/target-progress.ts';
import { aMeasure, aVoid, CONDITIONS, repsOf } from './rep-measures.ts';

const targetProgress = (reps: readonly RepMeasure[]): TargetProgress[] => progressOf(repsOf(reps));

const withConditions = (changes: Partial<Conditions>, more: Partial<RepMeasure> = {}): RepMeasure =>
  aMeasure({ conditions: { ...CONDITIONS, ...changes }, ...more });

test('no reps, no progress', () => expect(targetProgress([])).toEqual([]));

test('drivers and targets are kept apart, also where their names run together', () => {
  const all = targetProgress([
    aMeasure({ driver: 'a', targetId: 'b c' }),
    aMeasure({ driver: 'a b', targetId: 'c' }),
    aMeasure({ driver: 'a', targetId: 'b c' }),
  ]);
  expect(all.map(({ driver, targetId, days }) => [driver, targetId, days[0]?.reps])).toEqual([
    ['a', 'b c', 2],
    ['a b', 'c', 1],
  ]);
});

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
    const [progress] = targetProgress([aMeasure(), withConditions({ [name]: value }), aMeasure()]);
    expect(progress?.days.map(({ reps, changed }) => [reps, changed])).toEqual([
      [1, []],
      [1, [name]],
      [1, [name]],
    ]);
  });

  test('begins with a new day, and remembers what changed overnight', () => {
    const [progress] = targetProgress([
      aMeasure(),
      aMeasure({ day: '2026-11-26' }),
      withConditions({ footwear: 'socks' }, { day: '2026-11-27' }),
    ]);
    expect(progress?.days.map(({ day, changed }) => [day, changed])).toEqual([
      ['2026-11-25', []],
      ['2026-11-26', []],
      ['2026-11-27', ['footwear']],
    ]);
  });

  test('does not begin at a void rep, which has no score version', () => {
    const [progress] = targetProgress([
      aVoid('aborted'),
      aMeasure(),
      aVoid('device lost'),
      aMeasure(),
    ]);
    expect(progress?.days).toHaveLength(1);
    expect(progress?.days[0]?.conditions).toEqual(CONDITIONS);
  });

  test('begins at a new score version even with a void rep between', () => {
    const [progress] = targetProgress([
      aMeasure(),
      aVoid('aborted'),
      withConditions({ scoreVersion: 2 }),
    ]);
    expect(progress?.days.map(({ conditions }) => conditions.scoreVersion)).toEqual([1, 2]);
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
      const days = targetProgress(reps).flatMap((progress) => progress.days);
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

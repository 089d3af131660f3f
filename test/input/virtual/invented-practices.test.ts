import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isoWeek } from '../../../src/consistency/iso-week.ts';
import { localDate } from '../../../src/consistency/local-date.ts';
import { inventedCalendar } from '../../../src/input/virtual/invented-practices.ts';

const calendar = (weeks: number, seed: number) =>
  inventedCalendar(weeks, seed, '2026-02-04', 'Europe/Berlin');

test('three evenings a week, new pedals after three tenths, one week missed later, whatever the seed', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 5, max: 60 }),
      fc.integer({ min: 0, max: 1e6 }),
      (weeks, seed) => {
        const { practices, missedWeek, pedalWeek } = calendar(weeks, seed);
        expect(practices).toHaveLength(3 * (weeks - 1));
        expect(new Set(practices.map(({ startedAt }) => localDate(startedAt))).size).toBe(
          practices.length,
        );
        expect(new Set(practices.map(({ startedAt }) => isoWeek(localDate(startedAt)))).size).toBe(
          weeks - 1,
        );
        for (const [i, { startedAt, week, pedals }] of practices.entries()) {
          expect(week).not.toBe(missedWeek);
          expect(pedals).toBe(week < pedalWeek! ? 12 : 16);
          const hour = new Date(startedAt.utcMs + startedAt.offsetMin * 60_000).getUTCHours();
          expect(hour).toBeGreaterThanOrEqual(18);
          expect(hour).toBeLessThan(21);
          if (i > 0) expect(startedAt.utcMs).toBeGreaterThan(practices[i - 1]!.startedAt.utcMs);
        }
        // there are weeks on the old pedals, a week on the new ones before it, and one after it
        expect(pedalWeek).toBe(Math.ceil(0.3 * weeks));
        expect(missedWeek!).toBeGreaterThan(pedalWeek!);
        expect(missedWeek!).toBeLessThan(weeks - 1);
      },
    ),
  );
});

test('a few weeks have no room for either', () => {
  expect(calendar(3, 1)).toMatchObject({ missedWeek: null, pedalWeek: null });
  expect(calendar(4, 1)).toMatchObject({ missedWeek: null, pedalWeek: 2 });
  expect(calendar(1, 1).practices).toHaveLength(3);
});

test('is the same for the same seed and begins with the week of the day', () => {
  expect(calendar(8, 5)).toEqual(calendar(8, 5));
  expect(calendar(8, 5)).not.toEqual(calendar(8, 6));
  expect(isoWeek(localDate(calendar(8, 5).practices[0]!.startedAt))).toBe('2026-W06');
});

test('mixed, the last evening of a week goes on with another target, then the live car and a plan in turn', () => {
  const { practices } = inventedCalendar(4, 3, '2026-02-04', 'Europe/Berlin', true);
  const kinds = practices.map(({ kind }) => kind);
  const usual = ['usual', 'usual', 'usual', 'other target'];
  const [even, odd] = [
    [...usual, 'live car'],
    [...usual, 'plan'],
  ];
  expect(kinds).toEqual([...even, ...odd, ...even, ...odd]);
  for (const [i, { startedAt }] of practices.entries())
    if (i > 0) expect(startedAt.utcMs).toBeGreaterThan(practices[i - 1]!.startedAt.utcMs);
});

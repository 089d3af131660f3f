import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isoWeek } from '../../../src/consistency/iso-week.ts';
import { localDate } from '../../../src/consistency/local-date.ts';
import { inventedCalendar } from '../../../src/input/virtual/invented-practices.ts';

const calendar = (weeks: number, seed: number) =>
  inventedCalendar(weeks, seed, '2026-02-04', 'Europe/Berlin');

test('three evenings a week, one week missed, new pedals after two thirds, whatever the seed', () => {
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
          expect(pedals).toBe(week < pedalWeek! ? 16 : 12);
          const hour = new Date(startedAt.utcMs + startedAt.offsetMin * 60_000).getUTCHours();
          expect(hour).toBeGreaterThanOrEqual(18);
          expect(hour).toBeLessThan(21);
          if (i > 0) expect(startedAt.utcMs).toBeGreaterThan(practices[i - 1]!.startedAt.utcMs);
        }
        // the week before and the week after it are there, on the old pedals
        expect(missedWeek).toBeGreaterThanOrEqual(1);
        expect(missedWeek!).toBeLessThan(pedalWeek! - 1);
      },
    ),
  );
});

test('a few weeks have no room for either', () => {
  expect(calendar(3, 1)).toMatchObject({ missedWeek: null, pedalWeek: null });
  expect(calendar(4, 1)).toMatchObject({ missedWeek: null, pedalWeek: 3 });
  expect(calendar(1, 1).practices).toHaveLength(3);
});

test('is the same for the same seed and begins with the week of the day', () => {
  expect(calendar(8, 5)).toEqual(calendar(8, 5));
  expect(calendar(8, 5)).not.toEqual(calendar(8, 6));
  expect(isoWeek(localDate(calendar(8, 5).practices[0]!.startedAt))).toBe('2026-W06');
});

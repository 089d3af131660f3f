import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, isoWeek, mondayOf } from '../../src/consistency/iso-week.ts';
import { localDate } from '../../src/consistency/local-date.ts';
import { offsetMinutes } from '../../src/consistency/offset-minutes.ts';
import { startOfDay } from '../../src/consistency/start-of-day.ts';
import { zonedInstant } from '../../src/consistency/zoned-instant.ts';

const HOUR_MS = 3_600_000;
const hours = (date: string, zone: string): number =>
  (startOfDay(addDays(date, 1), zone) - startOfDay(date, zone)) / HOUR_MS;

describe('a day', () => {
  // New York: the examples of hoursInDay in MDN's Temporal.ZonedDateTime; the others from the tz database by Python's
  // zoneinfo.
  test.each([
    ['2024-03-10', 'America/New_York', 23],
    ['2024-11-03', 'America/New_York', 25],
    ['2024-11-04', 'America/New_York', 24],
    ['2024-03-31', 'Europe/Berlin', 23],
    ['2024-10-27', 'Europe/Berlin', 25],
    ['2024-04-07', 'Australia/Lord_Howe', 24.5],
  ])('%s in %s has %d hours', (date, zone, expected) => expect(hours(date, zone)).toBe(expected));

  test('starts at one o’clock where midnight does not exist (MDN, startOfDay)', () => {
    const start = startOfDay('2015-10-18', 'America/Sao_Paulo');
    expect(new Date(start).toISOString()).toBe('2015-10-18T03:00:00.000Z');
    expect(offsetMinutes(start, 'America/Sao_Paulo')).toBe(-120); // 01:00-02:00
    expect(offsetMinutes(start - 1, 'America/Sao_Paulo')).toBe(-180);
  });

  test('is the recording’s own date from its first to its last millisecond', () => {
    const zones = ['UTC', 'Europe/Berlin', 'America/New_York', 'Asia/Kathmandu', 'Pacific/Apia'];
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 365 * 40 }),
        fc.constantFrom(...zones),
        (days, zone) => {
          const date = addDays('2000-01-01', days);
          const start = startOfDay(date, zone);
          expect(localDate(zonedInstant(start - 1, zone)) < date).toBe(true);
          expect(localDate(zonedInstant(start, zone)) >= date).toBe(true);
        },
      ),
    );
  });
});

describe('the ISO 8601 week', () => {
  // from Python's date.isocalendar
  test.each([
    ['2005-01-01', '2004-W53'],
    ['2008-12-29', '2009-W01'],
    ['2010-01-03', '2009-W53'],
    ['2012-01-01', '2011-W52'],
    ['2021-01-03', '2020-W53'],
    ['2024-12-30', '2025-W01'],
    ['2026-12-31', '2026-W53'],
    ['2027-01-03', '2026-W53'],
  ])('of %s is %s', (date, week) => expect(isoWeek(date)).toBe(week));

  test('holds seven days, Monday first, and the week with 4 January is the first', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 365 * 60 }), (days) => {
        const date = addDays('1990-01-01', days);
        const monday = mondayOf(date);
        expect(new Date(monday).getUTCDay()).toBe(1);
        expect(monday <= date && date < addDays(monday, 7)).toBe(true);
        expect(isoWeek(monday)).toBe(isoWeek(date));
        expect(isoWeek(addDays(monday, 6))).toBe(isoWeek(date));
        expect(isoWeek(addDays(monday, 7)) > isoWeek(date)).toBe(true);
        const year = date.slice(0, 4);
        expect(isoWeek(`${year}-01-04`)).toBe(`${year}-W01`);
      }),
    );
  });

  // one instant, 2024-12-29T23:30Z, by Python's zoneinfo
  test.each([
    ['Europe/London', '2024-W52'],
    ['America/New_York', '2024-W52'],
    ['Pacific/Pago_Pago', '2024-W52'],
    ['Asia/Tokyo', '2025-W01'],
    ['Pacific/Kiritimati', '2025-W01'],
  ])('is the one on the wall in %s', (zone, week) => {
    const instant = zonedInstant(Date.UTC(2024, 11, 29, 23, 30), zone);
    expect(isoWeek(localDate(instant))).toBe(week);
  });
});

describe('the offset', () => {
  test.each([
    ['Asia/Kathmandu', 345],
    ['Pacific/Kiritimati', 840],
    ['Pacific/Pago_Pago', -660],
    ['UTC', 0],
  ])('of %s is %d minutes', (zone, minutes) => {
    for (const utcMs of [Date.UTC(2024, 5, 1), Date.UTC(2024, 11, 31, 23, 59, 59, 999)])
      expect(offsetMinutes(utcMs, zone)).toBe(minutes);
  });

  test('before 1970, between two milliseconds of a change, and of no zone', () => {
    expect(offsetMinutes(-1, 'UTC')).toBe(0);
    const change = Date.UTC(2024, 2, 31, 1); // Berlin goes to summer time at 01:00 UTC
    expect(offsetMinutes(change - 1, 'Europe/Berlin')).toBe(60);
    expect(offsetMinutes(change, 'Europe/Berlin')).toBe(120);
    expect(() => offsetMinutes(0, 'Atlantis/Capital')).toThrow(RangeError);
  });
});

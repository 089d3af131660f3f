import { expect, test } from 'vitest';
import { daysBetween } from '../../src/consistency/days-between.ts';

/** By the calendar: 2028 is a leap year; clocks change between March and April. */
test.each([
  ['2026-11-27', '2026-11-27', 0],
  ['2026-11-27', '2026-12-01', 4],
  ['2028-02-28', '2028-03-01', 2],
  ['2027-03-01', '2027-04-01', 31],
  ['2027-04-01', '2027-03-31', -1],
])('from %s to %s', (from, to, days) => {
  expect(daysBetween(from, to)).toBe(days);
});

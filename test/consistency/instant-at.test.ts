import { expect, test } from 'vitest';
import { instantAt } from '../../src/consistency/instant-at.ts';

// Berlin is one hour ahead of UTC in winter and two in summer; the clocks go forward on 2026-03-29 at 2:00
test.each([
  ['2026-02-02', 18 * 60, 'Europe/Berlin', '2026-02-02T17:00:00.000Z', 60],
  ['2026-03-29', 18 * 60 + 5, 'Europe/Berlin', '2026-03-29T16:05:00.000Z', 120],
  ['2026-03-28', 23 * 60 + 59, 'Europe/Berlin', '2026-03-28T22:59:00.000Z', 60],
  ['2026-03-29', 90, 'Europe/Berlin', '2026-03-29T00:30:00.000Z', 60],
  ['2026-11-25', 0, 'Asia/Kathmandu', '2026-11-24T18:15:00.000Z', 345],
  ['2026-06-01', 12 * 60, 'America/New_York', '2026-06-01T16:00:00.000Z', -240],
])('%s, %d minutes, %s', (date, minutes, zone, utc, offsetMin) => {
  const instant = instantAt(date, minutes, zone);
  expect(new Date(instant.utcMs).toISOString()).toBe(utc);
  expect(instant).toMatchObject({ zone, offsetMin });
});

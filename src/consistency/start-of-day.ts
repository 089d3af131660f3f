import { offsetMinutes } from './offset-minutes.ts';

const DAY_MS = 86_400_000;

/**
 * The instant at which a local date begins, in UTC milliseconds. A day is not always 24 h long and does not always
 * start at midnight: where the clocks go forward at midnight it starts at one o'clock. Where they go back across
 * midnight a date begins twice, and this is one of the two.
 *
 * @param date For example `2026-11-25`.
 * @param zone IANA zone.
 * @throws RangeError for a zone that the runtime does not know.
 */
export function startOfDay(date: string, zone: string): number {
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const isReached = (utcMs: number): boolean =>
    utcMs + offsetMinutes(utcMs, zone) * 60_000 >= midnight;
  // no offset is larger than 15 h
  let before = midnight - DAY_MS;
  let reached = midnight + DAY_MS;
  while (reached - before > 1) {
    const middle = Math.floor((before + reached) / 2);
    if (isReached(middle)) reached = middle;
    else before = middle;
  }
  return reached;
}

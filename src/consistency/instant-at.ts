import { offsetMinutes } from './offset-minutes.ts';
import { type ZonedInstant, zonedInstant } from './zoned-instant.ts';

/**
 * The instant at which clocks in a zone show a time of day. A time that the clocks skip comes out an hour later or
 * earlier; of one that they show twice it is one of the two.
 *
 * @param date For example `2026-11-25`.
 * @param minutes after midnight on the wall
 * @throws RangeError for a zone that the runtime does not know
 */
export function instantAt(date: string, minutes: number, zone: string): ZonedInstant {
  const wallMs = Date.parse(`${date}T00:00:00Z`) + minutes * 60_000;
  const guess = wallMs - offsetMinutes(wallMs, zone) * 60_000;
  return zonedInstant(wallMs - offsetMinutes(guess, zone) * 60_000, zone);
}

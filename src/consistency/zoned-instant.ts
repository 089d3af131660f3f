import { offsetMinutes } from './offset-minutes.ts';

/** An instant with the place it was recorded in, so that days and weeks mean the driver's own. */
export interface ZonedInstant {
  /** UTC milliseconds since the epoch. */
  readonly utcMs: number;
  /** IANA zone, for example `Europe/Berlin`. */
  readonly zone: string;
  /** Offset from UTC in minutes at that instant, east positive. */
  readonly offsetMin: number;
}

/**
 * An instant as it is recorded.
 *
 * @param zone The IANA zone of this computer, `Intl.DateTimeFormat().resolvedOptions().timeZone`.
 * @throws RangeError for a zone that the runtime does not know.
 */
export function zonedInstant(utcMs: number, zone: string): ZonedInstant {
  return { utcMs, zone, offsetMin: offsetMinutes(utcMs, zone) };
}

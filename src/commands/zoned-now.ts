import { localDate } from '../consistency/local-date.ts';
import { type ZonedInstant, zonedInstant } from '../consistency/zoned-instant.ts';

/** This instant in the zone the machine is set to. */
export function zonedNow(): ZonedInstant {
  return zonedInstant(Date.now(), Intl.DateTimeFormat().resolvedOptions().timeZone);
}

/** The local date of this instant. Asking for the zone by its name would take as long as all of a short answer. */
export function localToday(): string {
  const now = new Date();
  return localDate({ utcMs: now.getTime(), offsetMin: -now.getTimezoneOffset() });
}

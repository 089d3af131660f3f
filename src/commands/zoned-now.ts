import { offsetMinutes } from '../consistency/offset-minutes.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';

/** This instant in the zone the machine is set to. */
export function zonedNow(): ZonedInstant {
  const utcMs = Date.now();
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return { utcMs, zone, offsetMin: offsetMinutes(utcMs, zone) };
}

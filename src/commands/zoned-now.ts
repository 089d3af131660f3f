import { type ZonedInstant, zonedInstant } from '../consistency/zoned-instant.ts';

/** This instant in the zone the machine is set to. */
export function zonedNow(): ZonedInstant {
  return zonedInstant(Date.now(), Intl.DateTimeFormat().resolvedOptions().timeZone);
}

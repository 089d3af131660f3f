import type { ZonedInstant } from './zoned-instant.ts';

/**
 * The date on the driver's wall when it happened, as `2026-11-25`. It goes by the offset that was recorded, so that
 * neither the reader's own zone nor a later change of the zone's rules moves a rep to another day.
 */
export function localDate({ utcMs, offsetMin }: Omit<ZonedInstant, 'zone'>): string {
  return new Date(utcMs + offsetMin * 60_000).toISOString().slice(0, 10);
}

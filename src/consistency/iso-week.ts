const DAY_MS = 86_400_000;
/** What 1 January 1970 was, in days after a Monday. */
const THURSDAY = 3;

/**
 * The ISO 8601 week of a date, as `2026-W48`: weeks start on Monday, and a week belongs to the year that holds its
 * Thursday, so that the first days of January may lie in the last week of the year before.
 *
 * @param date For example `2026-11-25`.
 */
export function isoWeek(date: string): string {
  const thursdayMs = Date.parse(mondayOf(date)) + 3 * DAY_MS;
  const year = new Date(thursdayMs).getUTCFullYear();
  const week = Math.floor((thursdayMs - Date.UTC(year, 0, 1)) / (7 * DAY_MS)) + 1;
  return `${year}-W${String(week).padStart(2, '0')}`;
}

/** Of years of practices each day is asked for several times, and writing a date takes longest. */
const MONDAYS: Map<string, string> = new Map();

/** The Monday on or before a date. */
export function mondayOf(date: string): string {
  const known = MONDAYS.get(date);
  if (known !== undefined) return known;
  const ms = Date.parse(date);
  const daysAfterMonday = (((ms / DAY_MS + THURSDAY) % 7) + 7) % 7;
  const monday = dateOf(ms - daysAfterMonday * DAY_MS);
  MONDAYS.set(date, monday);
  return monday;
}

/** The date so many days later. */
export function addDays(date: string, days: number): string {
  return dateOf(Date.parse(date) + days * DAY_MS);
}

function dateOf(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}

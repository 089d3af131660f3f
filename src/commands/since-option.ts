import { localDate } from '../consistency/local-date.ts';
import { startOfDay } from '../consistency/start-of-day.ts';
import { Problem } from '../problem.ts';
import type { OptionValue } from './command.ts';

/**
 * Start of the day that `--since` names, where this computer stands, in UTC milliseconds; null where it was not given.
 * @throws Problem (exit code 2) for what is no day
 */
export function sinceOption(value: OptionValue, where: string): number | null {
  if (value === undefined) return null;
  const date = String(value);
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(date) && !Number.isNaN(midnight);
  if (isDate && localDate({ utcMs: midnight, offsetMin: 0 }) === date)
    return startOfDay(date, Intl.DateTimeFormat().resolvedOptions().timeZone);
  throw new Problem(`--since ${JSON.stringify(value)} is no day`, {
    where,
    next: 'Say it like 2026-11-25.',
    exitCode: 2,
  });
}

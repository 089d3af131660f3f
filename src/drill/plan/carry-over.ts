import { isoWeek } from '../../consistency/iso-week.ts';

/** Something that could be checked, and the driver's local date on which it was last driven; null for never. */
interface LeftAlone<Zone> {
  readonly zone: Zone;
  readonly lastDay: string | null;
}

/**
 * What the weekly check is driven on: what was left alone for longest, and not practised in this ISO week at all. What
 * was never driven was left alone for longest. What is good on the practised corner only was not learned for braking
 * (Soderstrom and Bjork, Perspect. Psychol. Sci. 10:176, 2015).
 *
 * @param candidates in the coach's order, which decides between equals
 * @param today the driver's local date, as `2026-11-25`
 * @param lastCheckDay local date of the last carry-over rep; null for none
 * @returns null where this week's check is done, or where everything was practised this week
 */
export function carryOverZone<Zone>(
  candidates: readonly LeftAlone<Zone>[],
  today: string,
  lastCheckDay: string | null,
): Zone | null {
  const week = isoWeek(today);
  if (lastCheckDay !== null && isoWeek(lastCheckDay) === week) return null;
  const left = candidates.filter(({ lastDay }) => lastDay === null || isoWeek(lastDay) !== week);
  const longest = left.toSorted((a, b) => (a.lastDay ?? '').localeCompare(b.lastDay ?? ''))[0];
  return longest?.zone ?? null;
}

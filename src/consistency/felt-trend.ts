import { type FeltAgreement, feltAgreement, type RatedRep } from './felt-agreement.ts';
import { isoWeek } from './iso-week.ts';
import { localDate } from './local-date.ts';
import type { ZonedInstant } from './zoned-instant.ts';

/** A rep with the moment at which it was driven. */
export interface DatedRating extends RatedRep {
  readonly at: ZonedInstant;
}

/** How well the driver felt the pedal in one week. */
export interface FeltWeek extends FeltAgreement {
  /** For example `2026-W48`. */
  readonly week: string;
}

/**
 * Felt against measured as a trend of its own: one value per ISO week in the zone of the recording, oldest first. A
 * week without a rating is not there; one with too few says how many there were.
 *
 * @param reps of one driver, in any order
 */
export function feltTrend(reps: Iterable<DatedRating>): readonly FeltWeek[] {
  const weeks = new Map<string, DatedRating[]>();
  for (const rep of reps) {
    if (rep.selfRating === null) continue;
    const week = isoWeek(localDate(rep.at));
    const rated = weeks.get(week) ?? [];
    rated.push(rep);
    weeks.set(week, rated);
  }
  return [...weeks]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([week, rated]) => ({ week, ...feltAgreement(rated) }));
}

import { REPS_FOR_SPREAD } from '../estimate.ts';
import type { Reps } from '../rep-columns.ts';
import type { PracticeValues } from './practices.ts';

/** The last practice with hidden reps enough for a spread. */
export interface LatestPractice {
  readonly practiceId: number;
  readonly day: string;
  /** Its hidden reps that count, oldest first. */
  readonly repIds: readonly number[];
}

/**
 * Null where no practice has ten hidden reps with a release.
 *
 * @param practices the release errors of the hidden reps
 */
export function latestPractice(
  { columns, places }: Reps,
  practices: readonly PracticeValues[],
): LatestPractice | null {
  const last = practices.findLast(({ values }) => values.length >= REPS_FOR_SPREAD);
  if (last === undefined) return null;
  const { practiceId, day } = last;
  const repIds: number[] = [];
  const { shared, sharedAt } = columns;
  for (let i = 0; i < places.length; i++) {
    const own = shared[sharedAt[places[i]!]!]!;
    if (own.practiceId !== practiceId) continue;
    const isCounted = !own.warmUp && own.voided === null && own.feedback === 'hidden';
    if (isCounted) repIds.push(columns.repIds[places[i]!]!);
  }
  return { practiceId, day, repIds };
}

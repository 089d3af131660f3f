import type { Feedback } from '../../drill/drill-view.ts';
import type { RepMeasure, RepNumbers } from '../rep-measure.ts';

/** The values of one practice. */
export interface PracticeValues {
  readonly practiceId: number;
  readonly day: string;
  readonly values: readonly number[];
}

/** What statistics are made of. */
export interface Pick {
  readonly feedback: Feedback;
  readonly number: (numbers: RepNumbers) => number | null;
}

/**
 * The values of reps practice by practice, in time order. Warm-up reps, void reps and reps that hold no such value
 * are left out; practices without any are too.
 */
export function practicesOf(reps: readonly RepMeasure[], pick: Pick): PracticeValues[] {
  const practices = new Map<number, { practiceId: number; day: string; values: number[] }>();
  for (const rep of reps) {
    if (rep.warmUp || rep.voided !== null || rep.feedback !== pick.feedback) continue;
    const value = rep.numbers === null ? null : pick.number(rep.numbers);
    if (value === null) continue;
    const { practiceId, day } = rep;
    const known = practices.get(practiceId);
    if (known === undefined) practices.set(practiceId, { practiceId, day, values: [value] });
    else known.values.push(value);
  }
  return [...practices.values()];
}

export const releaseError = (numbers: RepNumbers): number | null => numbers.releaseErrorLevel;
export const averageError = (numbers: RepNumbers): number | null => numbers.averageErrorLevel;
export const startError = (numbers: RepNumbers): number | null => numbers.startOfReleaseErrorS;

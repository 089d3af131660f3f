import type { Feedback } from '../../drill/drill-view.ts';
import type { Reps } from '../rep-columns.ts';
import type { RepNumbers } from '../rep-measure.ts';

/** The values of one practice. */
export interface PracticeValues {
  readonly practiceId: number;
  readonly day: string;
  readonly values: readonly number[];
}

/** What statistics are made of. */
export interface Pick {
  readonly feedback: Feedback;
  readonly number: keyof RepNumbers;
}

/**
 * The values of reps practice by practice, in time order. Warm-up reps, void reps and reps that hold no such value
 * are left out; practices without any are too.
 */
export function practicesOf({ columns, places }: Reps, pick: Pick): PracticeValues[] {
  const { shared, sharedAt } = columns;
  const numbers = columns.numbers[pick.number];
  const practices = new Map<number, { practiceId: number; day: string; values: number[] }>();
  let last: { practiceId: number; values: number[] } | undefined;
  for (let i = 0; i < places.length; i++) {
    const { feedback, warmUp, voided, practiceId, day } = shared[sharedAt[places[i]!]!]!;
    if (feedback !== pick.feedback || warmUp || voided !== null) continue;
    const value = numbers[places[i]!]!;
    if (Number.isNaN(value)) continue;
    if (last?.practiceId !== practiceId) {
      const own = practices.get(practiceId) ?? { practiceId, day, values: [] };
      if (own.values.length === 0) practices.set(practiceId, own);
      last = own;
    }
    last.values.push(value);
  }
  return [...practices.values()];
}

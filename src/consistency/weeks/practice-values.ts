import type { RepColumns, Reps } from '../rep-columns.ts';

/** What the statistics over weeks take from one practice. Warm-up reps, void reps and numbers that are none are left out. */
export interface PracticeValues {
  readonly practiceId: number;
  readonly day: string;
  /** Reps that ran to their end, of any kind. */
  readonly reps: number;
  readonly hidden: {
    readonly repIds: readonly number[];
    readonly releaseErrorLevel: readonly number[];
    readonly averageErrorLevel: readonly number[];
    readonly startOfReleaseErrorS: readonly number[];
  };
  readonly firstOfDay: { readonly releaseErrorLevel: readonly number[] };
}

/** Sorts reps by practice and day, in the order of the first rep of each. One walk over all reps for all that is asked later. */
export function practiceValues({ columns, places }: Reps): PracticeValues[] {
  const { shared, sharedAt } = columns;
  const practices = new Map<string, Gathered>();
  let last: Gathered | undefined;
  for (let i = 0; i < places.length; i++) {
    const place = places[i]!;
    const { practiceId, day, feedback, warmUp, voided } = shared[sharedAt[place]!]!;
    if (last?.practiceId !== practiceId || last.day !== day) {
      const key = `${day} ${practiceId}`;
      last = practices.get(key) ?? nothingOf(practiceId, day);
      practices.set(key, last);
    }
    if (voided !== null) continue;
    last.reps++;
    if (warmUp || feedback === 'shown') continue;
    if (feedback === 'hidden') addHidden(last.hidden, columns, place);
    else add(last.firstOfDay.releaseErrorLevel, columns.numbers.releaseErrorLevel[place]!);
  }
  return [...practices.values()];
}

interface Gathered extends PracticeValues {
  reps: number;
  readonly hidden: {
    readonly repIds: number[];
    readonly releaseErrorLevel: number[];
    readonly averageErrorLevel: number[];
    readonly startOfReleaseErrorS: number[];
  };
  readonly firstOfDay: { readonly releaseErrorLevel: number[] };
}

function nothingOf(practiceId: number, day: string): Gathered {
  const hidden = {
    repIds: [],
    releaseErrorLevel: [],
    averageErrorLevel: [],
    startOfReleaseErrorS: [],
  };
  return { practiceId, day, reps: 0, hidden, firstOfDay: { releaseErrorLevel: [] } };
}

function addHidden(
  hidden: Gathered['hidden'],
  { repIds, numbers }: RepColumns,
  place: number,
): void {
  hidden.repIds.push(repIds[place]!);
  add(hidden.releaseErrorLevel, numbers.releaseErrorLevel[place]!);
  add(hidden.averageErrorLevel, numbers.averageErrorLevel[place]!);
  add(hidden.startOfReleaseErrorS, numbers.startOfReleaseErrorS[place]!);
}

function add(values: number[], value: number): void {
  if (!Number.isNaN(value)) values.push(value);
}

import type { RepMeasure, RepNumbers } from './rep-measure.ts';

/** What reps of a practice share with many others of it: all but their numbers. */
export type SharedMeasure = Omit<RepMeasure, 'repId' | 'numbers'>;

/** Names of the numbers of a rep. */
export const REP_NUMBERS: readonly (keyof RepNumbers)[] = [
  'score',
  'releaseErrorLevel',
  'averageErrorLevel',
  'startOfReleaseErrorS',
  'peakError',
  'reapplications',
];

/**
 * Reps as columns, oldest first: years of them without an object for each. A rep is its place in the columns, and what
 * it shares with others is looked up by `shared[sharedAt[place]]`.
 */
export interface RepColumns {
  readonly repIds: Float64Array;
  readonly shared: readonly SharedMeasure[];
  readonly sharedAt: Uint32Array;
  /** NaN for none. Without a score a rep has no numbers at all. */
  readonly numbers: Readonly<Record<keyof RepNumbers, Float64Array>>;
}

/** Some reps of the columns, oldest first. */
export interface Reps {
  readonly columns: RepColumns;
  readonly places: Uint32Array;
}

/** All reps of the columns. */
export function allReps(columns: RepColumns): Reps {
  return { columns, places: Uint32Array.from(columns.repIds.keys()) };
}

/** What a rep shares with others. @param i from 0 to the number of `reps` less one */
export function sharedOf({ columns, places }: Reps, i: number): SharedMeasure {
  return columns.shared[columns.sharedAt[places[i]!]!]!;
}

/** Those of which `is` holds; asked once for neighbours that share everything. */
export function repsWhere(reps: Reps, is: (shared: SharedMeasure) => boolean): Reps {
  const { columns, places } = reps;
  const found = new Uint32Array(places.length);
  let count = 0;
  let [last, isLast] = [-1, false];
  for (const place of places) {
    const at = columns.sharedAt[place]!;
    if (at !== last) [last, isLast] = [at, is(columns.shared[at]!)];
    if (isLast) found[count++] = place;
  }
  return count === places.length ? reps : { columns, places: found.slice(0, count) };
}

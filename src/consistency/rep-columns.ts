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
 * it shares with others is looked up by `shared[sharedAt[place]]`. Loops over all of them count: an iterator takes
 * several times as long in a program that ends before it is compiled.
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
  const places = new Uint32Array(columns.repIds.length);
  for (let i = 0; i < places.length; i++) places[i] = i;
  return { columns, places };
}

/** What a rep shares with others. @param i from 0 to the number of `reps` less one */
export function sharedOf({ columns, places }: Reps, i: number): SharedMeasure {
  return columns.shared[columns.sharedAt[places[i]!]!]!;
}

/** Those of which `is` holds; asked once for neighbours that share everything. */
export function repsWhere(reps: Reps, is: (shared: SharedMeasure) => boolean): Reps {
  const { columns, places } = reps;
  const { shared, sharedAt } = columns;
  const found = new Uint32Array(places.length);
  let count = 0;
  let [last, isLast] = [-1, false];
  for (let i = 0; i < places.length; i++) {
    const at = sharedAt[places[i]!]!;
    if (at !== last) {
      last = at;
      isLast = is(shared[at]!);
    }
    if (isLast) found[count++] = places[i]!;
  }
  return count === places.length ? reps : { columns, places: found.slice(0, count) };
}

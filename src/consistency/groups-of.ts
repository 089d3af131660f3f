import type { Reps, SharedMeasure } from './rep-columns.ts';

/**
 * Sorts reps into groups, in the order of the first of each. Made for years of reps, of which neighbours nearly always
 * belong together: a key is only written out where they do not.
 *
 * @param isSame whether two belong together
 * @param keyOf the same text for those that do, another one for those that do not
 */
export function groupsOf(
  reps: Reps,
  isSame: (one: SharedMeasure, other: SharedMeasure) => boolean,
  keyOf: (one: SharedMeasure) => string,
): Reps[] {
  const { columns, places } = reps;
  const [groupAt, sizes] = groupNumbers(reps, isSame, keyOf);
  if (sizes.length === 1) return [reps];
  const groups = sizes.map((size) => ({ columns, places: new Uint32Array(size) }));
  const ends = new Uint32Array(sizes.length);
  for (let i = 0; i < places.length; i++) {
    const group = groupAt[columns.sharedAt[places[i]!]!]!;
    groups[group]!.places[ends[group]!++] = places[i]!;
  }
  return groups;
}

const NONE = 0xffffffff;

/** The number of the group of each that is shared, and how many reps each group has. */
function groupNumbers(
  { columns: { shared, sharedAt }, places }: Reps,
  isSame: (one: SharedMeasure, other: SharedMeasure) => boolean,
  keyOf: (one: SharedMeasure) => string,
): [Uint32Array, number[]] {
  const groupAt = new Uint32Array(shared.length).fill(NONE);
  const known = new Map<string, number>();
  const sizes: number[] = [];
  const groupOf = (one: SharedMeasure): number => {
    const key = keyOf(one);
    const group = known.get(key) ?? sizes.push(0) - 1;
    known.set(key, group);
    return group;
  };
  let last = NONE;
  for (let i = 0; i < places.length; i++) {
    const at = sharedAt[places[i]!]!;
    if (groupAt[at] === NONE)
      groupAt[at] =
        last !== NONE && isSame(shared[last]!, shared[at]!) ? groupAt[last]! : groupOf(shared[at]!);
    sizes[groupAt[at]!]!++;
    last = at;
  }
  return [groupAt, sizes];
}

/**
 * Sorts things into groups, in the order of the first of each. Made for years of reps, of which neighbours nearly always
 * belong together: a key is only written out where they do not.
 *
 * @param isSame whether two things belong together
 * @param keyOf the same text for things that do, another one for things that do not
 */
export function groupsOf<T>(
  all: readonly T[],
  isSame: (one: T, other: T) => boolean,
  keyOf: (one: T) => string,
): T[][] {
  const groups = new Map<string, T[]>();
  let group: T[] = [];
  for (const one of all) {
    const last = group.at(-1);
    if (last === undefined || !isSame(last, one)) {
      const key = keyOf(one);
      group = groups.get(key) ?? [];
      if (group.length === 0) groups.set(key, group);
    }
    group.push(one);
  }
  return [...groups.values()];
}

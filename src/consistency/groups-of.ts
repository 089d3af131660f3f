/**
 * Sorts things into groups with equal parts, in the order of the first of each group. Parts do not run together: `a`
 * and `b c` are not `a b` and `c`. Quick where neighbours mostly belong together.
 */
export function groupsOf<T>(
  all: readonly T[],
  partsOf: (one: T) => readonly (string | null)[],
): T[][] {
  const groups = new Map<string, T[]>();
  let [parts, group]: [readonly (string | null)[], T[]] = [[], []];
  for (const one of all) {
    const own = partsOf(one);
    if (!isSame(parts, own)) {
      const key = JSON.stringify(own);
      group = groups.get(key) ?? [];
      if (group.length === 0) groups.set(key, group);
      parts = own;
    }
    group.push(one);
  }
  return [...groups.values()];
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((part, i) => part === other[i]);
}

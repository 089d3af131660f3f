/** Single reps are named wrongly too often: noise alone moves the fit of a cause by 15 to 29 ms. */
const LEAST_REPS = 3;

/**
 * What most reps have in common: the largest group of one key, such as a kind and a direction. Early in one rep and
 * late in the next is no cause but spread.
 *
 * @returns null unless at least three share one; of groups as large as each other the one that came first
 */
export function sharedGroup<One>(
  found: readonly One[],
  keyOf: (one: One) => string,
): readonly [One, ...One[]] | null {
  const groups = new Map<string, [One, ...One[]]>();
  for (const one of found) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  const [largest] = [...groups.values()].sort((a, b) => b.length - a.length);
  return largest === undefined || largest.length < LEAST_REPS ? null : largest;
}

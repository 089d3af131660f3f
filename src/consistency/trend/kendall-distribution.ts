/**
 * Chance that Kendall's S (pairs that rise less pairs that fall) of `n` different values in random order is `s` or
 * more. Exact, by counting the orders with each number of falling pairs (Kendall and Gibbons, Rank Correlation
 * Methods, 5th ed., 5.2).
 *
 * @param n 2..170, so that n factorial is a number
 */
export function kendallUpper(s: number, n: number): number {
  const pairs = (n * (n - 1)) / 2;
  const mostFalling = Math.floor((pairs - s) / 2);
  return orderShares(n)
    .slice(0, Math.max(0, mostFalling + 1))
    .reduce((sum, share) => sum + share, 0);
}

/** Share of all orders of `n` values that have 0, 1, 2... falling pairs. */
function orderShares(n: number): readonly number[] {
  let shares = [1];
  for (let size = 2; size <= n; size++) {
    const next = new Array<number>(shares.length + size - 1).fill(0);
    // a new largest value can be put before 0 to size - 1 of the others
    for (const [falling, share] of shares.entries())
      for (let more = 0; more < size; more++) next[falling + more]! += share / size;
    shares = next;
  }
  return shares;
}

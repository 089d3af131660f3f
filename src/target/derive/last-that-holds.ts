/**
 * The last whole number that something holds for, where it holds up to some number and no further: by halving, or in
 * growing steps away from a guess and then by halving.
 *
 * @param from taken to hold
 * @param to taken not to hold
 */
export function lastThatHolds(
  holds: (n: number) => boolean,
  from: number,
  to: number,
  guess: number | null,
): number {
  let [last, beyond, step] = [from, to, 1];
  let next = guess ?? (from + to) >> 1;
  while (beyond - last > 1) {
    next = Math.min(beyond - 1, Math.max(last + 1, next));
    if (holds(next)) last = next;
    else beyond = next;
    const isEnclosed = guess === null || (last > from && beyond < to);
    next = isEnclosed ? (last + beyond) >> 1 : beyond < to ? beyond - step : last + step;
    step *= 2;
  }
  return last;
}

/**
 * The place where a rising function reaches a value, by halving, down to neighbouring numbers.
 *
 * @param rising for example a distribution function
 * @param value what it has to reach
 * @param low,high between which it does
 */
export function inverse(
  rising: (x: number) => number,
  value: number,
  low: number,
  high: number,
): number {
  let [below, above] = [low, high];
  for (;;) {
    const middle = below + (above - below) / 2;
    if (!(middle > below && middle < above)) return middle;
    if (rising(middle) < value) below = middle;
    else above = middle;
  }
}

/** Doubles `from` until the rising function has reached the value. */
export function reaching(rising: (x: number) => number, value: number, from = 1): number {
  let x = from;
  while (rising(x) < value && x < 1e300) x *= 2;
  return x;
}

/** A place, and by how much the function misses the value there. */
interface Try {
  readonly x: number;
  readonly miss: number;
}

/** The bracket closes to this share of the place: neighbouring numbers. */
const CLOSE = 2 * Number.EPSILON;

/**
 * The place where a rising function reaches a value, to the last digits of a number. It lies between the last two tries on
 * either side; the next try is by inverse quadratic interpolation where that can be trusted, else halfway (Chandrupatla,
 * 1997, Advances in Engineering Software 28:145).
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
  const at = (x: number): Try => ({ x, miss: rising(x) - value });
  let [last, across] = [at(low), at(high)];
  let before = across;
  for (let share = 0.5; ; ) {
    const next = at(last.x + share * (across.x - last.x));
    if (next.miss > 0 === last.miss > 0) before = last;
    else [before, across] = [across, last];
    last = next;
    const best = Math.abs(across.miss) < Math.abs(last.miss) ? across : last;
    const least = (CLOSE * Math.abs(best.x)) / Math.abs(across.x - last.x);
    if (!(least < 0.5) || best.miss === 0) return best.x;
    share = Math.min(1 - least, Math.max(least, interpolated(last, across, before)));
  }
}

/** How far from the last try to the one across the next should be, as a share. */
function interpolated(last: Try, across: Try, before: Try): number {
  const xi = (last.x - across.x) / (before.x - across.x);
  const phi = (last.miss - across.miss) / (before.miss - across.miss);
  const isTrusted = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
  if (!isTrusted) return 0.5;
  const toAcross = last.miss / (across.miss - last.miss);
  const toBefore = last.miss / (before.miss - last.miss);
  return (
    (toAcross * before.miss) / (across.miss - before.miss) +
    (((before.x - last.x) / (across.x - last.x)) * toBefore * across.miss) /
      (before.miss - across.miss)
  );
}

/** Doubles `from` until the rising function has reached the value. */
export function reaching(rising: (x: number) => number, value: number, from = 1): number {
  let x = from;
  while (rising(x) < value && x < 1e300) x *= 2;
  return x;
}

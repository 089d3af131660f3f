const PRIMES = [2, 3, 5, 7, 11, 13] as const;
const DECADES = 3;

/**
 * Starts around a guess that may be wrong by orders of magnitude: the guess, all of it times powers of ten, and each
 * parameter by itself times a power of ten, spread evenly (Halton 1960, Numerische Mathematik 2:84). The same every
 * time. Signs are kept.
 *
 * @param guess up to six parameters
 * @param count how many of the last kind
 */
export function startsAround(guess: readonly number[], count: number): number[][] {
  const together = [0, -1, 1, -2, 2, -3, 3].map((power) =>
    guess.map((value) => value * 10 ** power),
  );
  const apart = Array.from({ length: count }, (_, i) =>
    guess.map((value, j) => value * 10 ** (DECADES * (2 * radicalInverse(i + 1, PRIMES[j]!) - 1))),
  );
  return [...together, ...apart];
}

/** The digits of a whole number mirrored at the point: 0..1. */
function radicalInverse(whole: number, base: number): number {
  let [result, share] = [0, 1 / base];
  for (let rest = whole; rest > 0; rest = Math.floor(rest / base), share /= base)
    result += (rest % base) * share;
  return result;
}

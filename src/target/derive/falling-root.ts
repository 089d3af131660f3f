const MOST_ROUNDS = 30;

/**
 * Where a falling function of a positive argument comes down to 0, by secants from a guess, within what was seen above and
 * below; 0 where it is below 0 from there on.
 *
 * @param guess 0 or more; where the slope is near -1, the first step from it nearly arrives
 * @param close to 0, of the function's value
 */
export function fallingRoot(f: (x: number) => number, guess: number, close: number): number {
  let [before, x] = [guess, guess];
  let valueBefore = 0;
  /** Where it was above and below; 0 has still to be looked at. */
  let [above, below] = [-1, Number.POSITIVE_INFINITY];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const value = f(x);
    if (Math.abs(value) <= close || (x === 0 && value < 0)) break;
    if (value > 0) above = Math.max(above, x);
    else below = Math.min(below, x);
    const slope = round === 0 ? -1 : (value - valueBefore) / (x - before);
    const next = slope < 0 ? x - value / slope : x + value;
    [before, valueBefore] = [x, value];
    if (next > above && next < below && next >= 0) x = next;
    else x = above < 0 ? 0 : (above + below) / 2;
  }
  return x;
}

/** Steps of a count and how the digit below went with them. */
export interface CarryEvidence {
  /** Slow steps of one. */
  readonly steps: number;
  /** Steps with a carry less those with its opposite. */
  readonly carries: number;
}

/**
 * How a bit goes with a count that may continue in it. Each time a count slowly steps up by one the digit below goes
 * from 1 to 0, and from 0 to 1 when it steps down; a neighbour's bit does neither more often than chance.
 * @param upper the count without the digit, one value per report
 * @param digit the bit in question, 0 or 1, in the same reports
 */
export function carryEvidence(upper: Float64Array, digit: Float64Array): CarryEvidence {
  let [steps, carries] = [0, 0];
  for (let i = 2; i + 1 < upper.length; i++) {
    const step = upper[i]! - upper[i - 1]!;
    if (Math.abs(step) !== 1) continue;
    const slow = upper[i - 2] === upper[i - 1] && upper[i + 1] === upper[i];
    if (!slow) continue;
    steps++;
    carries += step * (digit[i - 1]! - digit[i]!);
  }
  return { steps, carries };
}

/** Share of carries that a quiet signal exceeds by far. */
const CLEAR_SHARE = 0.3;
/** In noise carries are fewer; then many steps must speak, by three standard errors of chance. */
const SIGNIFICANT = 3;
const MIN_STEPS = 2;

/**
 * The verdict, or null where the count stepped slowly too seldom.
 * @param enough steps from which missing carries say no
 */
export function isNextDigit({ steps, carries }: CarryEvidence, enough: number): boolean | null {
  if (steps >= MIN_STEPS && carries >= CLEAR_SHARE * steps) return true;
  if (steps < enough) return null;
  return carries >= SIGNIFICANT * Math.sqrt(steps);
}

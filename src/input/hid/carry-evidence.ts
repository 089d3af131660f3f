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

/** With a quiet digit two steps tell, when this share of them carries. */
const QUIET = { steps: 2, share: 0.3 } as const;
/** Where every step carries, four are beyond chance, which carries at one step in four: one field in 256. */
const EVERY_STEP = 4;
/** A restless one must beat chance, whose carries scatter by the root of half the steps, almost three times over. */
const RESTLESS = { steps: 6, perRoot: 2 } as const;

/**
 * The verdict, or null where the count stepped slowly too seldom.
 * @param quiet the digit never changed at rest
 * @param enough steps from which missing carries say no
 */
export function isNextDigit(
  { steps, carries }: CarryEvidence,
  quiet: boolean,
  enough: number,
): boolean | null {
  if (quiet && steps >= QUIET.steps && carries >= QUIET.share * steps) return true;
  if (steps >= EVERY_STEP && carries === steps) return true;
  if (steps >= RESTLESS.steps && carries >= RESTLESS.perRoot * Math.sqrt(steps)) return true;
  return steps < enough ? null : false;
}

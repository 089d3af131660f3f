import { incompleteBeta } from '../distribution/incomplete-beta.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';

/**
 * Where the median of the population lies, between two values of the sample that stand equally far from its ends:
 * exact whatever the distribution, as long as it is continuous (Conover, Practical Nonparametric Statistics, 3rd ed.,
 * 3.2). The narrowest such pair that reaches the level; of fewer than six values none reaches 95 %, and the ends are
 * given with the level they have. Null of fewer than two values.
 *
 * @param level 0..1
 */
export function medianInterval(
  values: ArrayLike<number>,
  level: number = USUAL_LEVEL,
): Interval | null {
  const n = values.length;
  if (n < 2) return null;
  const sorted = Float64Array.from(values).sort();
  const { place, attains } = placesFor(n, level);
  return { low: sorted[place - 1]!, high: sorted[n - place]!, level: attains };
}

interface Places {
  /** From the ends, from 1. */
  readonly place: number;
  readonly attains: number;
}

/** Weeks and days hold the same number of reps again and again. */
const known = new Map<number, Places>();

function placesFor(n: number, level: number): Places {
  const before = level === USUAL_LEVEL ? known.get(n) : undefined;
  if (before !== undefined) return before;
  const place = innermost(n, level);
  const found = { place, attains: attained(n, place) };
  if (level === USUAL_LEVEL && known.size < MOST_KNOWN) known.set(n, found);
  return found;
}

const MOST_KNOWN = 1000;

/** The largest place from the ends that still reaches the level, from 1. */
function innermost(n: number, level: number): number {
  let [reached, missed] = [1, Math.floor(n / 2) + 1];
  while (missed - reached > 1) {
    const middle = (reached + missed) >> 1;
    if (attained(n, middle) >= level) reached = middle;
    else missed = middle;
  }
  return reached;
}

/** 1 - 2 P(X < place) for X binomial of n tosses of a fair coin. */
function attained(n: number, place: number): number {
  return 1 - 2 * incompleteBeta(0.5, n - place + 1, place);
}

import { type Knot, monotoneCubic } from '../../curve/monotone-cubic.ts';

/** Half a per cent of full scale is a third of the narrowest corridor. */
const CLOSE_ENOUGH = 0.004;

/**
 * Few knots of a falling curve through many points: beginning with both ends, the point that the monotone cubic
 * misses most becomes a knot, until none is missed by more than 0.4 % of full scale.
 *
 * @param points three or more, `x` ascending, `y` never rising, in levels
 * @param most inner knots at most
 * @param above how far the knots may be over the points, in levels
 * @returns the inner knots, without both ends
 */
export function fitKnots(
  points: readonly Knot[],
  most: number,
  above: number = CLOSE_ENOUGH,
): readonly Knot[] {
  const chosen = new Set([0, points.length - 1]);
  while (chosen.size < most + 2) {
    const worst = worstOf(points, knotsOf(points, chosen), above);
    if (worst === null) break;
    chosen.add(worst);
  }
  return knotsOf(points, chosen).slice(1, -1);
}

function knotsOf(points: readonly Knot[], chosen: ReadonlySet<number>): Knot[] {
  return points.filter((_, i) => chosen.has(i));
}

/** Index of the point furthest from the curve; null where all are close. */
function worstOf(points: readonly Knot[], knots: readonly Knot[], above: number): number | null {
  const curve = monotoneCubic(knots);
  let [worst, most]: [number | null, number] = [null, 1];
  points.forEach(({ x, y }, i) => {
    const over = curve(x) - y;
    const miss = over > 0 ? over / above : -over / CLOSE_ENOUGH;
    if (miss > most) [worst, most] = [i, miss];
  });
  return worst;
}

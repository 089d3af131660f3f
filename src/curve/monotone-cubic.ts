/** A point a curve passes through. */
export interface Knot {
  readonly x: number;
  readonly y: number;
}

/**
 * Monotone piecewise cubic through the knots: it never leaves the range of two neighbouring knots, so a falling
 * list gives a falling curve. Constant outside the first and last knot.
 *
 * Conditions and Hermite form: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246. Slopes: weighted
 * harmonic mean inside (Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304) and the three-point
 * shape-preserving formula at the ends.
 *
 * @param knots two or more, `x` strictly ascending
 * @throws RangeError for fewer knots or another order
 */
export function monotoneCubic(knots: readonly Knot[]): (x: number) => number {
  const slopes = monotoneSlopes(knots);
  return (x) => {
    const first = knots[0]!;
    const last = knots[knots.length - 1]!;
    if (!(x > first.x)) return first.y;
    if (x >= last.x) return last.y;
    const i = cellOf(knots, x);
    return hermite(knots[i]!, knots[i + 1]!, slopes[i]!, slopes[i + 1]!, x);
  };
}

/** The derivative at each knot that `monotoneCubic` uses. */
export function monotoneSlopes(knots: readonly Knot[]): readonly number[] {
  refuseDisorder(knots);
  const widths = knots.slice(1).map((knot, i) => knot.x - knots[i]!.x);
  const secants = knots.slice(1).map((knot, i) => (knot.y - knots[i]!.y) / widths[i]!);
  const cells = widths.length;
  if (cells === 1) return [secants[0]!, secants[0]!];
  return knots.map((_, i) => {
    if (i === 0) return endSlope(widths[0]!, widths[1]!, secants[0]!, secants[1]!);
    if (i === cells)
      return endSlope(
        widths[cells - 1]!,
        widths[cells - 2]!,
        secants[cells - 1]!,
        secants[cells - 2]!,
      );
    return interiorSlope(widths[i - 1]!, widths[i]!, secants[i - 1]!, secants[i]!);
  });
}

function refuseDisorder(knots: readonly Knot[]): void {
  if (knots.length < 2) throw new RangeError('a monotone cubic needs two knots or more');
  for (let i = 1; i < knots.length; i++)
    if (!(knots[i]!.x > knots[i - 1]!.x)) throw new RangeError('knots have to ascend');
}

function interiorSlope(
  widthBefore: number,
  widthAfter: number,
  before: number,
  after: number,
): number {
  if (before * after <= 0) return 0;
  const weightBefore = 2 * widthAfter + widthBefore;
  const weightAfter = widthAfter + 2 * widthBefore;
  return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
}

/** Parabola through the end and its two neighbours, held to the sign and three times the nearest secant. */
function endSlope(width: number, nextWidth: number, secant: number, nextSecant: number): number {
  const slope = ((2 * width + nextWidth) * secant - width * nextSecant) / (width + nextWidth);
  if (slope * secant <= 0) return 0;
  if (secant * nextSecant < 0 && Math.abs(slope) > 3 * Math.abs(secant)) return 3 * secant;
  return slope;
}

function cellOf(knots: readonly Knot[], x: number): number {
  let low = 0;
  let high = knots.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (knots[middle]!.x <= x) low = middle;
    else high = middle;
  }
  return low;
}

function hermite(
  left: Knot,
  right: Knot,
  slopeLeft: number,
  slopeRight: number,
  x: number,
): number {
  const width = right.x - left.x;
  const t = (x - left.x) / width;
  const rest = 1 - t;
  return (
    left.y * rest * rest * (1 + 2 * t) +
    slopeLeft * width * t * rest * rest +
    right.y * t * t * (3 - 2 * t) -
    slopeRight * width * t * t * rest
  );
}

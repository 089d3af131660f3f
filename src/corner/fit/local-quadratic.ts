/** Value and slope of a noisy signal at a moment. */
interface LocalValue {
  readonly value: number;
  /** Per second. */
  readonly slope: number;
}

/** Fewer do not carry a parabola through noise. */
const FEWEST = 5;

/**
 * A parabola by least squares through the samples within `halfS` of a moment, or through the five nearest where there
 * are fewer.
 *
 * @param timeS ascending
 * @source local polynomial regression, Savitzky and Golay, Anal. Chem. 36 (1964) 1627, on uneven times
 */
export function localQuadratic(
  timeS: Float64Array,
  values: Float64Array,
  atS: number,
  halfS: number,
): LocalValue {
  let from = timeS.findIndex((time) => time >= atS - halfS);
  if (from < 0) from = timeS.length - 1;
  let to = from;
  while (to < timeS.length && timeS[to]! <= atS + halfS) to++;
  while (to - from < FEWEST && (from > 0 || to < timeS.length)) {
    const left = from > 0 ? atS - timeS[from - 1]! : Number.POSITIVE_INFINITY;
    const right = to < timeS.length ? timeS[to]! - atS : Number.POSITIVE_INFINITY;
    if (left <= right) from--;
    else to++;
  }
  return parabola(timeS, values, atS, from, to);
}

function parabola(
  timeS: Float64Array,
  values: Float64Array,
  atS: number,
  from: number,
  to: number,
): LocalValue {
  const [m, y] = [new Float64Array(5), new Float64Array(3)];
  for (let i = from; i < to; i++) {
    const t = timeS[i]! - atS;
    for (let k = 0, power = 1; k < 5; k++, power *= t) {
      m[k]! += power;
      if (k < 3) y[k]! += power * values[i]!;
    }
  }
  const [m0, m1, m2, m3, m4] = [m[0]!, m[1]!, m[2]!, m[3]!, m[4]!];
  const [c0, c1, c2] = [m2 * m4 - m3 * m3, m1 * m4 - m2 * m3, m1 * m3 - m2 * m2];
  const whole = m0 * c0 - m1 * c1 + m2 * c2;
  return {
    value: (y[0]! * c0 - y[1]! * c1 + y[2]! * c2) / whole,
    slope: (-y[0]! * c1 + y[1]! * (m0 * m4 - m2 * m2) - y[2]! * (m0 * m3 - m1 * m2)) / whole,
  };
}

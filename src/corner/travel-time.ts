/** One end of a stretch of road. */
interface StretchEnd {
  readonly speedMps: number;
  /** Positive when slowing. */
  readonly decelerationMps2: number;
}

/**
 * Time from one place to a later one, s: Simpson's rule on 1/v, the squared speed in the middle by cubic Hermite
 * interpolation.
 */
export function travelTimeS(lengthM: number, from: StretchEnd, to: StretchEnd): number {
  const middle =
    (from.speedMps ** 2 + to.speedMps ** 2) / 2 +
    (lengthM / 4) * (to.decelerationMps2 - from.decelerationMps2);
  return (lengthM / 6) * (1 / from.speedMps + 4 / Math.sqrt(middle) + 1 / to.speedMps);
}

/**
 * Seconds over a stretch of road at lap pace, from the slowest point of one zone to the brake point of the next, under
 * a constant power: the work on the car per second is the same everywhere, so that with `P/m` constant
 * `t = (v2^2 - v1^2) / (2 P/m)` and `d = (v2^3 - v1^3) / (3 P/m)`. Divided by each other `P/m` falls out, and
 * `t = 3/2 d (v1 + v2) / (v1^2 + v1 v2 + v2^2)`, which for equal speeds is `d / v`. Left out: the rest of the corner,
 * drag that takes most of the power at the end of a long straight, gear changes.
 *
 * @param lengthM of the stretch
 * @param fromMps slowest speed of the zone behind, above 0 or `toMps` is
 * @param toMps approach speed of the zone ahead
 */
export function roadTimeS(lengthM: number, fromMps: number, toMps: number): number {
  const squares = fromMps ** 2 + fromMps * toMps + toMps ** 2;
  return (1.5 * lengthM * (fromMps + toMps)) / squares;
}

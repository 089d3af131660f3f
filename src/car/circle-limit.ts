/**
 * Largest force F along the whole car, N, braking or driving, before an axle with the share s of it leaves its friction
 * circle: (s F + E)^2 + Y^2 = mu^2 (N + (F + T) g)^2. The solver asks some ten thousand times a zone, hence the numbers
 * one by one.
 *
 * @param loadN N, without load transfer
 * @param heldN E, what acts on this axle already
 * @param totalHeldN T, what acts on both axles already
 * @param gain g, load the axle gains per newton along the car, negative where it loses load
 */
export function circleLimitN(
  mu: number,
  loadN: number,
  share: number,
  lateralN: number,
  heldN: number,
  totalHeldN: number,
  gain: number,
): number {
  const load = loadN + totalHeldN * gain;
  if (load <= 0) return 0;
  if (share === 0 && heldN === 0) return untilUnloadedN(mu * load - lateralN, mu * gain);
  // a F^2 + 2 b F - c = 0
  const a = share * share - mu * gain * mu * gain;
  const b = share * heldN - mu * mu * load * gain;
  const c = mu * load * mu * load - heldN * heldN - lateralN * lateralN;
  const root = b * b + a * c;
  if (root < 0 || (c <= 0 && b >= 0)) return 0;
  // Of the two forms of the root, the one that adds numbers of one sign.
  if (b > 0) return c / (b + Math.sqrt(root));
  return a > 0 ? (Math.sqrt(root) - b) / a : Number.POSITIVE_INFINITY;
}

/** An axle that only corners: until its spare lateral force is gone with its load; Infinity where it gains load. */
function untilUnloadedN(spareN: number, sparePerNewton: number): number {
  if (sparePerNewton >= 0) return Number.POSITIVE_INFINITY;
  return Math.max(0, spareN / -sparePerNewton);
}

import { driveForceN, type Engine, type Gearbox, overRevSpeedMps } from './gearbox.ts';

const STEPS = 200;
const HALVINGS = 50;
/** Slowest speed looked at, as a share of the gear's own highest. */
const LEAST_SHARE = 0.3;

/**
 * Road speed at which the next gear is taken at full throttle, m/s: where it pulls as much as this one and from there
 * on more, or else at the rev limit. Infinity in the highest gear.
 */
export function upshiftSpeedMps(gearbox: Gearbox, engine: Engine, gear: number): number {
  if (gear >= gearbox.ratios.length) return Number.POSITIVE_INFINITY;
  const most = overRevSpeedMps(gearbox, gear);
  const nextPullsMore = (speedMps: number): boolean =>
    driveForceN(gearbox, engine, gear + 1, speedMps) >=
    driveForceN(gearbox, engine, gear, speedMps);
  let high = most * (1 - 1e-9);
  if (!nextPullsMore(high)) return most;
  let low = high;
  while (nextPullsMore(low) && low > LEAST_SHARE * most) {
    high = low;
    low -= most / STEPS;
  }
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (nextPullsMore(middle)) high = middle;
    else low = middle;
  }
  return high;
}

import type { GridWindow } from './grid-window.ts';
import { RATE_HZ } from './scoring-filter.ts';

/** Rate of change per second at a grid point, by central difference; one-sided at the ends. */
export function rateAt(levels: Float64Array, i: number): number {
  const before = Math.max(0, i - 1);
  const after = Math.min(levels.length - 1, i + 1);
  return after === before ? 0 : ((levels[after]! - levels[before]!) * RATE_HZ) / (after - before);
}

/** Steepest fall in level per second over the window; negative where it only rises. */
export function steepestFall(levels: Float64Array, { from, to }: GridWindow): number {
  let steepest = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) steepest = Math.max(steepest, -rateAt(levels, i));
  return steepest;
}

/** Speed of release over the window, positive while the pressure comes off. */
export function releaseSpeed(levels: Float64Array, { from, to }: GridWindow): Float64Array {
  const speed = new Float64Array(to - from + 1);
  for (let i = 0; i < speed.length; i++) speed[i] = -rateAt(levels, from + i);
  return speed;
}

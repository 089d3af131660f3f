import type { GridWindow } from './grid-window.ts';

/** Pressure going back up during a release. */
export interface Reapplications {
  /** Times the pressure turned from falling to rising. */
  readonly count: number;
  /** All rises together as a share of the whole release. */
  readonly share: number;
  /** The same of one step of the hysteresis: a rise is known to within it. */
  readonly stepShare: number;
}

/**
 * Counts re-applications between the peak and the end of the release with hysteresis: a point is kept only once it is
 * `hysteresis` away from the last one kept, so that tremor and the filter's own ringing are not counted.
 */
export function reapplications(
  levels: Float64Array,
  { from, to }: GridWindow,
  hysteresis: number,
): Reapplications {
  let kept = levels[from]!;
  let falling = false;
  let count = 0;
  let risen = 0;
  for (let i = from; i <= to; i++) {
    const move = levels[i]! - kept;
    if (Math.abs(move) < hysteresis) continue;
    if (move > 0) risen += move;
    if (move > 0 && falling) count += 1;
    falling = move < 0;
    kept = levels[i]!;
  }
  const whole = Math.max(levels[from]! - levels[to]!, hysteresis);
  return { count, share: risen / whole, stepShare: hysteresis / whole };
}

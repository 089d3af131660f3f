import type { SpeedSide } from './fault.ts';
import type { LiveMeasures } from './live-measures.ts';
import { quantile } from './quantile.ts';
import type { RepOutcome } from './rep-score.ts';

/**
 * Far out, as a share of the target's speed. On a line that is given the grip asked for goes with the square of the
 * speed: a tenth too fast asks for 21 % more than the target used, which no tyre has left; a tenth too slow leaves 19 %
 * unused.
 */
const FAR_SHARE = 0.1;
/** Once is spread: so many reps have to share it. */
const LEAST_REPS = 3;

/** Difference from the target's speed at the slowest point as a share of it; positive is too fast. */
export function slowestSpeedShare({
  slowestSpeedMps,
  slowestSpeedErrorMps: errorMps,
}: LiveMeasures): number {
  return errorMps / (slowestSpeedMps - errorMps);
}

/**
 * Whether a speed is worth a word, and whether it comes before details of the foot.
 *
 * @param band the driver's own, as a share of the target's speed
 */
export function speedOff(live: LiveMeasures, band: number): 'in band' | 'off' | 'far' {
  const share = Math.abs(slowestSpeedShare(live));
  if (share > Math.max(FAR_SHARE, band)) return 'far';
  return share > band ? 'off' : 'in band';
}

/** Which way a car is off its speed. */
export const speedSide = (errorMps: number): SpeedSide => (errorMps > 0 ? 'fast' : 'slow');

/** Most reps of a block were far out on one side. */
export interface SharedSpeed {
  /** Median of those reps, m/s; positive is too fast. */
  readonly errorMps: number;
  readonly reps: number;
  /** Reps with the live car that were scored. */
  readonly of: number;
}

/**
 * @param least what is out, as a share of the target's speed; as it is, far out
 * @returns null unless at least three reps, and more than half of them, were out on the same side
 */
export function sharedSpeed(
  outcomes: readonly RepOutcome[],
  least: number = FAR_SHARE,
): SharedSpeed | null {
  const lives = outcomes.flatMap((outcome) =>
    outcome.kind === 'scored' ? (outcome.live ?? []) : [],
  );
  for (const side of [1, -1]) {
    const far = lives.filter((live) => side * slowestSpeedShare(live) > least);
    if (far.length < LEAST_REPS || 2 * far.length <= lives.length) continue;
    const errors = far.map(({ slowestSpeedErrorMps }) => slowestSpeedErrorMps);
    return { errorMps: quantile(errors, 0.5)!, reps: far.length, of: lives.length };
  }
  return null;
}

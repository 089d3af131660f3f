import { columnOf } from '../trace/column-of.ts';
import type { Curve, Target } from './target.ts';

/** Part of the largest angle from which on the wheel sets the pace, and up to which: outside, noise would. */
const FROM_SHARE = 0.05;
const TO_SHARE = 0.95;
/** A wheel that turns less is going straight. */
const LEAST_TURN_DEG = 5;
const STEP_S = 0.001;

/** The stretch of a target along which the wheel says where in it the driver is. */
export interface PacedStretch {
  /** Target time of its ends. */
  readonly fromS: number;
  readonly toS: number;
  /** The wheel at its ends, degrees into the corner. */
  readonly fromDeg: number;
  readonly toDeg: number;
  /** 1 for a corner to the left, -1 for one to the right. */
  readonly direction: 1 | -1;
  /** Target time at which the target's own wheel first is so far in; between `fromS` and `toS`. */
  timeAt(intoCornerDeg: number): number;
}

const STRETCHES = new WeakMap<Target, PacedStretch | null>();

/**
 * Where the wheel can pace a target over time: on the way from 5 to 95 % of its largest angle. Null where the target
 * leaves steering to the driver, or has all of the brake off before the wheel goes in.
 */
export function pacedStretch(target: Target): PacedStretch | null {
  const known = STRETCHES.get(target);
  if (known !== undefined) return known;
  const { steering, marks } = target;
  const built = steering === null ? null : stretchOf(steering);
  const stretch = built !== null && built.fromS < marks.brakeOff ? built : null;
  STRETCHES.set(target, stretch);
  return stretch;
}

function stretchOf(steering: Curve): PacedStretch | null {
  const count = Math.ceil((steering.end - steering.start) / STEP_S) + 1;
  const angles = columnOf(count, (i) => steering.at(steering.start + i * STEP_S));
  const largest = angles.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (Math.abs(largest) < LEAST_TURN_DEG) return null;
  const direction = largest > 0 ? 1 : -1;
  const reached = reachedSoFar(angles, direction);
  const timeAt = (deg: number): number => steering.start + STEP_S * firstAtLeast(reached, deg);
  const [fromDeg, toDeg] = [FROM_SHARE * Math.abs(largest), TO_SHARE * Math.abs(largest)];
  const [fromS, toS] = [timeAt(fromDeg), timeAt(toDeg)];
  return {
    ...{ fromS, toS, fromDeg, toDeg, direction },
    timeAt: (deg) => Math.min(toS, Math.max(fromS, timeAt(deg))),
  };
}

/** As far as the wheel has been in up to each place. */
function reachedSoFar(angles: Float64Array, direction: 1 | -1): Float64Array {
  let most = Number.NEGATIVE_INFINITY;
  return angles.map((angle) => {
    most = Math.max(most, direction * angle);
    return most;
  });
}

/** Place, in parts of a step, at which the wheel first is so far in; the last one where it never is. */
function firstAtLeast(reached: Float64Array, deg: number): number {
  let [low, high] = [0, reached.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (reached[middle]! >= deg) high = middle;
    else low = middle + 1;
  }
  const [before, after] = [reached[low - 1], reached[low]!];
  if (before === undefined || after < deg) return low;
  return low - 1 + (deg - before) / (after - before);
}

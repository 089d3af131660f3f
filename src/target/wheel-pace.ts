import type { Track } from '../trace/track.ts';
import type { PacedStretch } from './paced-stretch.ts';

/** Steps of the fold. */
export const PACE_HZ = 1000;
/** How much quicker than the clock the place on the target runs after a wheel that is ahead: what a foot can follow. */
const MOST_RATE = 2;

/** Where on its target a rep that is paced by the wheel is. Never changed; each stretch of time gives a new one. */
export interface WheelPace {
  /** Steps done since the target's zero; negative before it. */
  readonly steps: number;
  /** Target time. */
  readonly placeS: number;
  /** As far as the wheel has been in. */
  readonly reachedDeg: number;
  /** Last value of the wheel; null before it has said anything. */
  readonly heldDeg: number | null;
}

/** At the target's zero. @param heldDeg where the wheel stands */
export function startPace(heldDeg: number | null): WheelPace {
  return { steps: 0, placeS: 0, reachedDeg: 0, heldDeg };
}

/**
 * The pace up to `untilS`. Up to where the target's wheel goes in the place on the target follows the clock; from there
 * on it is where the target's wheel is as far in as the driver's has been: it waits for a late wheel, and runs after an
 * early one at twice the clock at most, which a foot can still follow. Behind the stretch the clock takes over again.
 * The steps lie on a grid from the target's zero on, so that a rep is the same however its samples are cut.
 *
 * @param wheel samples later than those seen so far, degrees left positive
 * @param originS the target's zero on the samples' clock
 * @param onStep called for each step with its place
 */
export function advancePace(
  pace: WheelPace,
  stretch: PacedStretch,
  wheel: Track,
  originS: number,
  untilS: number,
  onStep: (placeS: number) => void = () => undefined,
): WheelPace {
  let { steps, placeS, reachedDeg, heldDeg } = pace;
  const last = Math.floor((untilS - originS) * PACE_HZ + 1e-6);
  let next = 0;
  while (steps < last) {
    steps++;
    const atS = originS + steps / PACE_HZ;
    while (next < wheel.timeS.length && wheel.timeS[next]! <= atS) heldDeg = wheel.value[next++]!;
    reachedDeg = Math.max(reachedDeg, stretch.direction * (heldDeg ?? 0));
    placeS = stepped(placeS, reachedDeg, stretch);
    onStep(placeS);
  }
  return { steps, placeS, reachedDeg, heldDeg: wheel.value.at(-1) ?? heldDeg };
}

function stepped(placeS: number, reachedDeg: number, stretch: PacedStretch): number {
  const stepS = 1 / PACE_HZ;
  if (placeS >= stretch.toS) return placeS + stepS;
  const isIn = reachedDeg >= stretch.fromDeg;
  const wheelS = isIn ? stretch.timeAt(reachedDeg) : stretch.fromS;
  if (placeS >= wheelS) return placeS;
  return Math.min(wheelS, placeS + (isIn ? MOST_RATE : 1) * stepS);
}

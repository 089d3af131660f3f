import { brakeForcesN, pedalBendsN } from './brake-force.ts';
import type { Brakes } from './brakes.ts';

/** A stretch of brake forces over which the front axle's force is straight: share times force plus offset. */
interface SplitPiece {
  /** Where the stretch begins, N of both axles; the last one never ends. */
  readonly fromN: number;
  readonly share: number;
  readonly offsetN: number;
}

/** How a brake force divides between the axles, rising; push-out and a rear valve bend it. */
export type BrakeSplit = readonly SplitPiece[];

/**
 * Front axle force as a function of the force of both axles, exact: it is straight between the places where pads touch
 * or the valve closes in. One piece without offset where neither is there.
 *
 * @param rotatingShare of the force, part that slows the rotating parts and never reaches the road
 */
export function brakeSplitOf(brakes: Brakes, rotatingShare = 0): BrakeSplit {
  const bends = pedalBendsN(brakes).map((pedalN) => brakeForcesN(brakes, pedalN));
  const last = pedalBendsN(brakes).at(-1) ?? 0;
  const ends = [...bends.slice(1), brakeForcesN(brakes, last + 1e4)];
  const toRoad = 1 / (1 + rotatingShare);
  return bends.flatMap((from, i) => {
    const to = ends[i] ?? from;
    const fromN = from.front + from.rear;
    const grownN = to.front + to.rear - fromN;
    if (!(grownN > 0)) return [];
    const share = snapped((to.front - from.front) / grownN);
    return [{ fromN: fromN * toRoad, share, offsetN: (from.front - share * fromN) * toRoad }];
  });
}

/** An axle that gets nothing or all of it gets just that, not a rounding error of it. */
function snapped(share: number): number {
  const whole = Math.round(share);
  return Math.abs(share - whole) < 1e-12 ? whole : share;
}

/** Front axle force of a force of both axles, N. */
export function frontForceN(split: BrakeSplit, totalN: number): number {
  for (let i = split.length - 1; i >= 0; i--) {
    const { fromN, share, offsetN } = split[i] as SplitPiece;
    if (totalN >= fromN || i === 0) return share * totalN + offsetN;
  }
  return 0;
}

/** Force of both axles at which one of them has its own, N: the inverse of `frontForceN`; Infinity where it never has. */
export function totalForAxleN(split: BrakeSplit, axle: 'front' | 'rear', axleN: number): number {
  for (let i = split.length - 1; i >= 0; i--) {
    const { fromN, share, offsetN } = split[i] as SplitPiece;
    const own = axle === 'front' ? share : 1 - share;
    const offset = axle === 'front' ? offsetN : -offsetN;
    const total = own > 0 ? (axleN - offset) / own : Number.POSITIVE_INFINITY;
    if (total >= fromN || i === 0) return Math.min(total, split[i + 1]?.fromN ?? total);
  }
  return Number.POSITIVE_INFINITY;
}

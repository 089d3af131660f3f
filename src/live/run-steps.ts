import { STEP_S } from './live-car.ts';
import type { LiveRun } from './live-run.ts';

/** The step of a time, within the run. */
export function stepOf({ columns: { timeS } }: LiveRun, atS: number): number {
  const step = Math.round((atS - timeS[0]!) / STEP_S);
  return Math.min(Math.max(step, 0), timeS.length - 1);
}

/** The first step at or beyond a place; null where the car never got there. */
export function stepAtPlace({ columns: { placeM } }: LiveRun, sM: number): number | null {
  let [low, high] = [0, placeM.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (placeM[middle]! >= sM) high = middle;
    else low = middle + 1;
  }
  return low < placeM.length ? low : null;
}

import type { Track } from '../trace/track.ts';
import type { ClutchHold } from './drill-model.ts';

const PRESSED_LEVEL = 0.8;
const RELEASED_LEVEL = 0.4;
/** Longer than any clutch use on the way into a corner. */
const HOLD_S = 2;

export const NO_HOLD: ClutchHold = { sinceS: null, spent: false };

/** Follows the clutch; `pause` is true at the moment it has been down for two seconds. */
export function followClutch(
  { sinceS, spent }: ClutchHold,
  { timeS, value }: Track,
  untilS: number,
): { readonly hold: ClutchHold; readonly pause: boolean } {
  let since = sinceS;
  let done = spent;
  for (let i = 0; i < timeS.length; i++) {
    if (value[i]! >= PRESSED_LEVEL) since ??= timeS[i]!;
    else if (value[i]! < RELEASED_LEVEL) {
      since = null;
      done = false;
    }
  }
  const pause = since !== null && !done && untilS - since >= HOLD_S;
  return { hold: { sinceS: since, spent: done || pause }, pause };
}

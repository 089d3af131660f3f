import type { Track } from '../trace/track.ts';

/** Below this a pedal counts as released, above it as pressed. */
export const PRESSED_LEVEL = 0.05;

/**
 * Seconds from the throttle's full lift to the onset of braking; negative where the brake came first. The lift is the
 * last one before the onset, or the first one after it for a throttle that is still open then.
 *
 * @returns null where no lift was recorded.
 */
export function liftToHit(throttle: Track, onsetS: number): number | null {
  let before: number | null = null;
  for (let i = 1; i < throttle.timeS.length; i++) {
    const timeS = throttle.timeS[i]!;
    if (!Number.isFinite(timeS)) continue;
    if (timeS > onsetS && before !== null && isShut(throttle, i - 1)) break;
    if (isShut(throttle, i) && !isShut(throttle, i - 1)) {
      if (timeS > onsetS) return onsetS - timeS;
      before = timeS;
    }
  }
  return before === null ? null : onsetS - before;
}

function isShut({ value }: Track, i: number): boolean {
  return value[i]! <= PRESSED_LEVEL;
}

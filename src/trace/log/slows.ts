import type { ZoneSamples } from './logged-zone.ts';

/** Over so long a stretch, so that the noise of a speed signal does not count. */
const STRETCH_S = 0.2;
/** More than closing the throttle alone does to a car at moderate speed. */
const LEAST_DECELERATION_MPS2 = 2;
const LEAST_DROP_MPS = 2;

/**
 * True where the car slows by at least 2 m/s and at some time at 2 m/s^2 or more over 0.2 s; also where the log has no
 * speed to tell by.
 */
export function slows(samples: ZoneSamples): boolean {
  const speed = samples.get('speed');
  const timeS = samples.get('time')!;
  if (speed === undefined) return true;
  let first = 0;
  let brisk = false;
  for (let i = 0; i < speed.length; i++) {
    while (timeS[i]! - timeS[first]! > STRETCH_S) first++;
    const spanS = timeS[i]! - timeS[Math.max(0, first - 1)]!;
    const drop = speed[Math.max(0, first - 1)]! - speed[i]!;
    if (spanS >= STRETCH_S && drop >= LEAST_DECELERATION_MPS2 * spanS) brisk = true;
  }
  return brisk && fall(speed) >= LEAST_DROP_MPS;
}

/** Largest fall from an earlier to a later sample. */
function fall(speed: Float64Array): number {
  let highest = Number.NEGATIVE_INFINITY;
  let most = 0;
  for (const value of speed) {
    highest = Math.max(highest, value);
    most = Math.max(most, highest - value);
  }
  return most;
}

import type { Track } from './track.ts';

/** Time stamps carry microseconds: a sample this much after a grid point still counts as being at it. */
const STAMP_RESOLUTION_S = 1e-6;

/**
 * A track on a uniform grid by zero-order hold: point i is the last value at or before `startS + i / rateHz`. Before
 * the first sample the first value is taken. Samples that are not numbers are passed over, so the value before holds.
 *
 * @returns `count` values; all 0 where the track holds no number at all.
 */
export function resample(
  track: Track,
  startS: number,
  count: number,
  rateHz: number,
): Float64Array {
  const out = new Float64Array(count);
  let next = firstNumber(track, 0);
  let held = track.value[next] ?? 0;
  for (let i = 0; i < count; i++) {
    const limit = startS + i / rateHz + STAMP_RESOLUTION_S;
    while (next < track.timeS.length && track.timeS[next]! <= limit) {
      held = track.value[next]!;
      next = firstNumber(track, next + 1);
    }
    out[i] = held;
  }
  return out;
}

/** Index of the first sample from `from` on whose time and value are numbers, or the track's length. */
function firstNumber(track: Track, from: number): number {
  let i = from;
  while (i < track.timeS.length && !isSample(track, i)) i++;
  return i;
}

function isSample(track: Track, i: number): boolean {
  return Number.isFinite(track.timeS[i]) && Number.isFinite(track.value[i]);
}

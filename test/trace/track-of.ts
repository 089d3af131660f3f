import type { Track } from '../../src/trace/track.ts';

/** A track of samples of seconds and values. */
export function trackOf(...samples: readonly (readonly [number, number])[]): Track {
  return {
    timeS: Float64Array.from(samples, ([timeS]) => timeS),
    value: Float64Array.from(samples, ([, value]) => value),
  };
}

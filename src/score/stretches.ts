import type { GripEvent } from './live-measures.ts';

/** From when to when something held, seconds from the cue. */
export interface Stretch {
  readonly fromS: number;
  readonly toS: number;
}

/** When it held at either axle, in order and joined where they overlap. What still goes on ends with the run. */
export function stretchesOf(events: readonly GripEvent[], endS: number): Stretch[] {
  const joined: { fromS: number; toS: number }[] = [];
  const inOrder = [...events].sort((a, b) => a.fromS - b.fromS);
  for (const { fromS, toS } of inOrder) {
    const last = joined[joined.length - 1];
    const untilS = toS ?? endS;
    if (last !== undefined && fromS <= last.toS) last.toS = Math.max(last.toS, untilS);
    else joined.push({ fromS, toS: untilS });
  }
  return joined;
}

import { setTimeout } from 'node:timers/promises';
import { monotonicUs } from '../reader/monotonic-us.ts';

/** What is paced by time asks it of a clock. */
export interface Clock {
  /** Microseconds since an arbitrary start; never goes back. */
  readonly nowUs: () => number;
  /** Resolves after so many milliseconds. */
  readonly wait: (ms: number) => Promise<unknown>;
}

export const WALL_CLOCK: Clock = { nowUs: monotonicUs, wait: setTimeout };

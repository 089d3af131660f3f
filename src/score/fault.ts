/** Which way a car misses its speed at the slowest point. */
export type SpeedSide = 'fast' | 'slow';

/** One thing to tell the driver about a rep. */
export interface Fault {
  /** In the driver's words, without a full stop. */
  readonly words: string;
  /** The same in one or two short words, to be read from two metres; they say what was, never what to do. */
  readonly glance: readonly string[];
  /** What it makes the car at the slowest point by itself; null where it may be either. */
  readonly makes: SpeedSide | null;
  /** True for what is told before a corner entered far too fast or too slow: it is why, or dearer. */
  readonly isFirst: boolean;
}

/** A fault of these words. */
export function fault(words: string, ...glance: readonly string[]): Fault {
  return { words, glance, makes: null, isFirst: false };
}

/** A fault that makes the car so at the slowest point. */
export function making(makes: SpeedSide, made: Fault): Fault {
  return { ...made, makes };
}

/** A fault that is told before all others. */
export function first(told: Fault): Fault {
  return { ...told, isFirst: true };
}

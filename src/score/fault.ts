/** One thing to tell the driver about a rep. */
export interface Fault {
  /** In the driver's words, without a full stop. */
  readonly words: string;
  /** The same in one or two short words, to be read from two metres; they say what was, never what to do. */
  readonly glance: readonly string[];
}

/** A fault of these words. */
export function fault(words: string, ...glance: readonly string[]): Fault {
  return { words, glance };
}

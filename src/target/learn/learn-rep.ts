import type { Track } from '../../trace/track.ts';

/** Moments that mean the same in every rep, in the order in which they come; turn-in may stand elsewhere. */
const LANDMARKS = ['onset', 'near peak', 'start of release', 'turn-in', 'brake off'] as const;
export type Landmark = (typeof LANDMARKS)[number];

/** One rep to learn from, with its own landmarks. Times are seconds of its own record. */
export interface LearnRep {
  /** Number of the zone, or id of the rep in the history. */
  readonly number: number;
  /** Level 0..1 as recorded, every millisecond from `startS` on. */
  readonly levels: Float64Array;
  readonly startS: number;
  readonly restingLevel: number;
  readonly landmarksS: Readonly<Record<Exclude<Landmark, 'turn-in'>, number>>;
  /** Null without a wheel, or where it did not turn. */
  readonly turnInS: number | null;
  readonly steering: Track | null;
}

/** A rep that was not taken, and why. */
export interface LeftOut {
  readonly number: number;
  readonly reason: string;
}

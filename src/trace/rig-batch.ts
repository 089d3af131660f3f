import type { Gap } from './gap.ts';
import type { Track } from './track.ts';

/** What a learned wheel button does in the drill. */
export type ButtonAction =
  | 'next'
  | 'repeat'
  | 'pause'
  | 'note'
  | 'feedback'
  | 'finish'
  | 'self-rating'
  | 'display'
  | 'upshift'
  | 'downshift';

/** A wheel button or paddle going down or up. */
export interface ButtonEvent {
  readonly timeS: number;
  /** Name shown to the driver, for example `wheel button 4`. */
  readonly control: string;
  readonly pressed: boolean;
  /** What the rig assigned to it; null for a button without a job. */
  readonly action: ButtonAction | null;
}

/**
 * Everything the rig said in one slice of time, decoded and calibrated. Batches follow each other without overlap:
 * every sample of a batch is later than the previous batch's `untilS` and not later than its own.
 */
export interface RigBatch {
  /** Level 0..1. */
  readonly brake: Track;
  /** Level 0..1. */
  readonly throttle: Track;
  /** Level 0..1, 1 is fully pressed. */
  readonly clutch: Track;
  /** Degrees at the steering wheel, left positive. */
  readonly steering: Track;
  readonly buttons: readonly ButtonEvent[];
  /** Gaps of the brake's device that ended in this batch; they may have begun in an earlier one. */
  readonly gaps: readonly Gap[];
  /** Watermark in seconds of the source's monotonic clock: nothing stamped earlier will follow. */
  readonly untilS: number;
  /** Reports lost since the source was opened, as far as anyone can know. */
  readonly dropped: number;
}

import type { Gap } from './gap.ts';
import type { ButtonEvent } from './rig-batch.ts';
import type { Track } from './track.ts';

export type { Gap } from './gap.ts';

/**
 * The finished recording of one rep: all the rig offered, from before the cue to after the release. Times are
 * seconds from the cue. It is the only input of the score, whether it was recorded live, replayed, read from the
 * history or from a CSV file.
 */
export interface RepRecord {
  /** Level 0..1. At least 0.3 s before the onset of braking where the source allows. */
  readonly brake: Track;
  /** Level 0..1; null where the rig has no such axis. */
  readonly throttle: Track | null;
  /** Level 0..1; null where the rig has no such axis. */
  readonly clutch: Track | null;
  /** Degrees, left positive; null where the rig has no wheel. */
  readonly steering: Track | null;
  readonly buttons: readonly ButtonEvent[];
  readonly gaps: readonly Gap[];
  /** One count of the brake's sensor as a level, the resolution of the record; 0 where unknown. */
  readonly brakeStepLevel: number;
  /** End of the recording: the last value of each track holds until here. */
  readonly endS: number;
}

import type { RigBatch } from '../trace/rig-batch.ts';
import type { Track } from '../trace/track.ts';
import { indexAfter } from './progress.ts';

/** The part of a batch that is later than `afterS`. */
export function batchAfter(batch: RigBatch, afterS: number): RigBatch {
  const later = (track: Track): Track => {
    const from = indexAfter(track, afterS);
    if (from === 0) return track;
    return { timeS: track.timeS.subarray(from), value: track.value.subarray(from) };
  };
  return {
    ...batch,
    brake: later(batch.brake),
    throttle: later(batch.throttle),
    clutch: later(batch.clutch),
    steering: later(batch.steering),
    buttons: batch.buttons.filter(({ timeS }) => timeS > afterS),
  };
}

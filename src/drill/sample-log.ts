import { EMPTY_TRACK, type Track } from '../trace/track.ts';

interface Buffer {
  readonly timeS: Float64Array;
  readonly value: Float64Array;
  used: number;
}

/**
 * A growing track that behaves as a value: appending gives a new log and leaves the old one as it was. Logs share
 * one buffer, in which only the newest writes, past what all others see; appending costs O(1) per sample.
 */
export interface SampleLog {
  readonly buffer: Buffer;
  readonly count: number;
  /** The log as a track, once it was asked for. */
  track: Track | null;
}

const FIRST_CAPACITY = 1024;

export const EMPTY_LOG: SampleLog = {
  buffer: { ...EMPTY_TRACK, used: 0 },
  count: 0,
  track: EMPTY_TRACK,
};

/** Adds samples `from` to `to` (exclusive) of a track, `originS` taken off their times. */
export function appendSamples(
  log: SampleLog,
  track: Track,
  from: number,
  to: number,
  originS: number,
): SampleLog {
  if (to <= from) return log;
  const count = log.count + to - from;
  const buffer = roomFor(log, count);
  for (let i = from, at = log.count; i < to; i++, at++) {
    buffer.timeS[at] = track.timeS[i]! - originS;
    buffer.value[at] = track.value[i]!;
  }
  buffer.used = count;
  return { buffer, count, track: null };
}

/** The log as a track, without copying: the same one for the same log. */
export function trackOf(log: SampleLog): Track {
  log.track ??= seenUpTo(log);
  return log.track;
}

function seenUpTo({ buffer, count }: SampleLog): Track {
  return { timeS: buffer.timeS.subarray(0, count), value: buffer.value.subarray(0, count) };
}

/** The log's own buffer where it is the newest and there is room, else a larger copy. */
function roomFor({ buffer, count }: SampleLog, needed: number): Buffer {
  if (buffer.used === count && needed <= buffer.timeS.length) return buffer;
  const capacity = Math.max(FIRST_CAPACITY, 2 * needed);
  const copy = {
    timeS: new Float64Array(capacity),
    value: new Float64Array(capacity),
    used: count,
  };
  copy.timeS.set(buffer.timeS.subarray(0, count));
  copy.value.set(buffer.value.subarray(0, count));
  return copy;
}

/** Longest report kept whole (the largest interrupt packet of a full-speed device); longer ones are cut to this. */
export const REPORT_BYTES_MAX = 64;

/** Indices into `RingMemory.counters`. Written and taken count reports modulo 2^32 and never go back. */
export const WRITTEN = 0;
export const TAKEN = 1;
export const DROPPED = 2;

const WATERMARK_AT = 16;
const HEADER_BYTES = 24;
const BYTES_PER_REPORT = Float64Array.BYTES_PER_ELEMENT + 1 + 1 + REPORT_BYTES_MAX;

/**
 * The shared memory of a ring between one writing and one reading thread, seen as columns with one entry per report.
 * Who may write what: the writer everything but `TAKEN`, the reader only `TAKEN`.
 */
export interface RingMemory {
  /** Reports it can hold, a power of two. */
  readonly capacity: number;
  readonly counters: Int32Array;
  /** One entry, microseconds: a 64-bit integer, because only integers are read in one piece. */
  readonly watermarkUs: BigInt64Array;
  readonly timeUs: Float64Array;
  readonly device: Uint8Array;
  readonly length: Uint8Array;
  /** `REPORT_BYTES_MAX` bytes per report. */
  readonly bytes: Uint8Array;
}

/**
 * Memory for at least `reports` reports, rounded up to a power of two. The default holds what two devices at 1 kHz
 * send in 5 s.
 *
 * @throws RangeError unless 1 <= reports <= 2^24.
 */
export function createRing(reports: number = 2 * 1000 * 5): SharedArrayBuffer {
  if (!(reports >= 1 && reports <= 2 ** 24)) throw new RangeError('a ring holds 1 to 2^24 reports');
  const capacity = 2 ** Math.ceil(Math.log2(reports));
  return new SharedArrayBuffer(HEADER_BYTES + capacity * BYTES_PER_REPORT);
}

/** The columns of memory made by `createRing`, in any thread. */
export function viewRing(memory: SharedArrayBuffer): RingMemory {
  const capacity = (memory.byteLength - HEADER_BYTES) / BYTES_PER_REPORT;
  const deviceAt = HEADER_BYTES + capacity * Float64Array.BYTES_PER_ELEMENT;
  return {
    capacity,
    counters: new Int32Array(memory, 0, 3),
    watermarkUs: new BigInt64Array(memory, WATERMARK_AT, 1),
    timeUs: new Float64Array(memory, HEADER_BYTES, capacity),
    device: new Uint8Array(memory, deviceAt, capacity),
    length: new Uint8Array(memory, deviceAt + capacity, capacity),
    bytes: new Uint8Array(memory, deviceAt + 2 * capacity, capacity * REPORT_BYTES_MAX),
  };
}

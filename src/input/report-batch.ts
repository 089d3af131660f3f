/**
 * Raw input reports of all devices in one slice of time, in columns. Report i is
 * `bytes.subarray(offset[i], offset[i] + length[i])`. The arrays may be reused by the source: read them before
 * returning. Only the first `count` entries are valid.
 */
export interface ReportBatch {
  readonly count: number;
  /** Index into the source's `devices`. */
  readonly device: Uint8Array;
  /** Arrival on the source's monotonic clock, microseconds. */
  readonly timeUs: Float64Array;
  readonly offset: Uint32Array;
  readonly length: Uint16Array;
  readonly bytes: Uint8Array;
  /** Watermark: no report stamped earlier than this will follow. */
  readonly untilUs: number;
  /** Reports dropped since the source was opened. */
  readonly dropped: number;
}

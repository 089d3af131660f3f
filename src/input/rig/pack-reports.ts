import type { ReportBatch } from '../report-batch.ts';

/** One report before it is packed into a batch's columns. */
export interface LooseReport {
  /** Index into the source's devices. */
  readonly device: number;
  readonly timeUs: number;
  readonly bytes: Uint8Array;
}

/** Packs reports into the columns of a batch. For sources whose reports do not come out of the reader's memory. */
export function packReports(
  reports: readonly LooseReport[],
  untilUs: number,
  dropped: number,
): ReportBatch {
  const size = reports.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const batch = {
    count: reports.length,
    device: Uint8Array.from(reports, ({ device }) => device),
    timeUs: Float64Array.from(reports, ({ timeUs }) => timeUs),
    offset: new Uint32Array(reports.length),
    length: Uint16Array.from(reports, ({ bytes }) => bytes.length),
    bytes: new Uint8Array(size),
    untilUs,
    dropped,
  };
  let end = 0;
  for (const [i, { bytes }] of reports.entries()) {
    batch.offset[i] = end;
    batch.bytes.set(bytes, end);
    end += bytes.length;
  }
  return batch;
}

import type { ReportBatch } from '../report-batch.ts';

/** A batch being filled report by report; one allocation per column, none per report. */
export class ReportColumns {
  readonly bytes: Uint8Array;
  readonly #device: Uint8Array;
  readonly #timeUs: Float64Array;
  readonly #offset: Uint32Array;
  readonly #length: Uint16Array;
  #count = 0;
  #end = 0;

  constructor(mostReports: number, mostBytes: number) {
    this.bytes = new Uint8Array(mostBytes);
    this.#device = new Uint8Array(mostReports);
    this.#timeUs = new Float64Array(mostReports);
    this.#offset = new Uint32Array(mostReports);
    this.#length = new Uint16Array(mostReports);
  }

  /** Makes room for one more report and returns where in `bytes` it starts; its bytes are 0. */
  add(device: number, timeUs: number, length: number): number {
    const start = this.#end;
    this.#device[this.#count] = device;
    this.#timeUs[this.#count] = timeUs;
    this.#offset[this.#count] = start;
    this.#length[this.#count] = length;
    this.#count += 1;
    this.#end += length;
    return start;
  }

  batch(untilUs: number): ReportBatch {
    return {
      count: this.#count,
      device: this.#device,
      timeUs: this.#timeUs,
      offset: this.#offset,
      length: this.#length,
      bytes: this.bytes,
      untilUs,
      dropped: 0,
    };
  }
}

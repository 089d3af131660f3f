import type { ReportBatch } from '../report-batch.ts';
import {
  DROPPED,
  REPORT_BYTES_MAX,
  type RingMemory,
  TAKEN,
  viewRing,
  WRITTEN,
} from './ring-memory.ts';

/** The reading end of a ring. One thread holds one. */
export class RingReader {
  readonly #ring: RingMemory;
  readonly #mask: number;
  readonly #columns: Pick<ReportBatch, 'device' | 'timeUs' | 'offset' | 'length' | 'bytes'>;
  #taken: number;
  #untilUs = 0;
  #dropped = 0;
  /** Dropped while nobody was reading. */
  #forgiven = 0;

  constructor(memory: SharedArrayBuffer) {
    this.#ring = viewRing(memory);
    const { capacity } = this.#ring;
    this.#mask = capacity - 1;
    this.#columns = {
      device: new Uint8Array(capacity),
      timeUs: new Float64Array(capacity),
      offset: Uint32Array.from({ length: capacity }, (_, i) => i * REPORT_BYTES_MAX),
      length: new Uint16Array(capacity),
      bytes: new Uint8Array(capacity * REPORT_BYTES_MAX),
    };
    this.#taken = Atomics.load(this.#ring.counters, TAKEN);
  }

  /** All reports since the last call, in the order of their arrival. The columns are reused by the next call. */
  drain(): ReportBatch {
    // Before the count: what was pushed ahead of this watermark is then sure to be in the batch.
    const watermarkUs = Number(Atomics.load(this.#ring.watermarkUs, 0));
    const count = this.#waiting();
    for (let i = 0; i < count; i++) this.#copy((this.#taken + i) & this.#mask, i);
    this.#release(count);
    const lastUs = count > 0 ? this.#columns.timeUs[count - 1]! : 0;
    this.#untilUs = Math.max(this.#untilUs, watermarkUs, lastUs);
    this.#dropped = this.#droppedEver() - this.#forgiven;
    const { device, timeUs, offset, length, bytes } = this.#columns;
    const [untilUs, dropped] = [this.#untilUs, this.#dropped];
    return { count, device, timeUs, offset, length, bytes, untilUs, dropped };
  }

  /** Forgets what is waiting and what was dropped since the last call of `drain`: nobody was reading. */
  discard(): void {
    this.#release(this.#waiting());
    this.#forgiven = this.#droppedEver() - this.#dropped;
  }

  #droppedEver(): number {
    return Atomics.load(this.#ring.counters, DROPPED) >>> 0;
  }

  #waiting(): number {
    return (Atomics.load(this.#ring.counters, WRITTEN) - this.#taken) | 0;
  }

  #release(count: number): void {
    this.#taken = (this.#taken + count) | 0;
    Atomics.store(this.#ring.counters, TAKEN, this.#taken);
  }

  #copy(slot: number, i: number): void {
    const ring = this.#ring;
    const to = this.#columns;
    const length = ring.length[slot]!;
    to.device[i] = ring.device[slot]!;
    to.timeUs[i] = ring.timeUs[slot]!;
    to.length[i] = length;
    const from = slot * REPORT_BYTES_MAX;
    for (let b = 0; b < length; b++) to.bytes[i * REPORT_BYTES_MAX + b] = ring.bytes[from + b]!;
  }
}

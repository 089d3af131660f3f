import {
  DROPPED,
  REPORT_BYTES_MAX,
  type RingMemory,
  TAKEN,
  viewRing,
  WRITTEN,
} from './ring-memory.ts';

/** The writing end of a ring. One thread holds one; it never waits and never throws. */
export class RingWriter {
  readonly #ring: RingMemory;
  readonly #mask: number;
  #written: number;

  constructor(memory: SharedArrayBuffer) {
    this.#ring = viewRing(memory);
    this.#mask = this.#ring.capacity - 1;
    this.#written = Atomics.load(this.#ring.counters, WRITTEN);
  }

  /**
   * Adds one report, or drops and counts it when the ring is full: the reader must never find a report half
   * overwritten, and a recording with its end missing can be told from a whole one.
   *
   * @param device index of the device, 0..255
   * @param timeUs arrival, not before any earlier report or watermark
   * @returns whether it was kept
   */
  push(device: number, timeUs: number, report: Uint8Array): boolean {
    const ring = this.#ring;
    if (((this.#written - Atomics.load(ring.counters, TAKEN)) | 0) >= ring.capacity) {
      Atomics.add(ring.counters, DROPPED, 1);
      return false;
    }
    const slot = this.#written & this.#mask;
    ring.timeUs[slot] = timeUs;
    ring.device[slot] = device;
    ring.length[slot] = this.#copy(report, slot);
    // The store publishes the columns written before it to a reader that loads the count.
    this.#written = (this.#written + 1) | 0;
    Atomics.store(ring.counters, WRITTEN, this.#written);
    return true;
  }

  /** When the last report that was kept arrived; 0 before the first. */
  get lastUs(): number {
    return this.#ring.timeUs[(this.#written - 1) & this.#mask]!;
  }

  /** Promises that no report stamped earlier than this will be pushed. */
  advance(untilUs: number): void {
    Atomics.store(this.#ring.watermarkUs, 0, BigInt(Math.floor(untilUs)));
  }

  /** Byte by byte: a view per report would be garbage at 1 kHz. */
  #copy(report: Uint8Array, slot: number): number {
    const length = Math.min(report.length, REPORT_BYTES_MAX);
    const at = slot * REPORT_BYTES_MAX;
    for (let i = 0; i < length; i++) this.#ring.bytes[at + i] = report[i]!;
    return length;
  }
}

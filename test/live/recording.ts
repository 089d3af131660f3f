import type { Subscription } from 'rxjs';
import type { ReportBatch } from '../../src/input/report-batch.ts';
import type { ReportSource } from '../../src/input/report-source.ts';
import type { VirtualDevice } from './virtual-rig.ts';

/** One report as it arrived. */
export interface Arrival {
  readonly bytes: Buffer;
  readonly counter: number;
  readonly sentUs: number;
  readonly stampedUs: number;
}

/** All that a source delivers from virtual devices, by device. */
export class Recording {
  readonly arrivals: readonly Arrival[][];
  dropped = 0;
  readonly #rig: readonly VirtualDevice[];
  readonly #subscription: Subscription;

  constructor(source: ReportSource, rig: readonly VirtualDevice[]) {
    this.#rig = rig;
    this.arrivals = rig.map(() => []);
    this.#subscription = source.batches$.subscribe((batch) => this.#take(batch));
  }

  /** Forgets what has arrived so far. */
  clear(): void {
    for (const arrivals of this.arrivals) arrivals.length = 0;
  }

  stop(): void {
    this.#subscription.unsubscribe();
  }

  #take(batch: ReportBatch): void {
    this.dropped = batch.dropped;
    for (let i = 0; i < batch.count; i++) {
      const at = batch.offset[i]!;
      const bytes = Buffer.from(batch.bytes.subarray(at, at + batch.length[i]!));
      const { counter, sentUsAt } = this.#rig[batch.device[i]!]!.layout;
      this.arrivals[batch.device[i]!]!.push({
        bytes,
        counter: bytes.readUIntLE(counter.at, counter.bytes),
        sentUs: wholeUs(batch.timeUs[i]!, bytes.readUInt32LE(sentUsAt)),
        stampedUs: batch.timeUs[i]!,
      });
    }
  }
}

/** Reports missing between the first and the last, by their counter. */
export function lost(arrivals: readonly Arrival[], counterBytes: number): number {
  const modulus = 2 ** (8 * counterBytes);
  let sum = 0;
  for (let i = 1; i < arrivals.length; i++) {
    sum += (arrivals[i]!.counter - arrivals[i - 1]!.counter - 1 + modulus) % modulus;
  }
  return sum;
}

/** Microseconds from sending to stamping. */
export function latenessUs(arrivals: readonly Arrival[]): number[] {
  return arrivals.map(({ stampedUs, sentUs }) => stampedUs - sentUs);
}

export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** The time whose low 32 bits were sent, not after the time of arrival. */
function wholeUs(arrivedUs: number, low: number): number {
  const base = Math.floor(arrivedUs / 2 ** 32) * 2 ** 32 + low;
  return base > arrivedUs ? base - 2 ** 32 : base;
}

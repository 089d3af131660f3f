import type { Subscription } from 'rxjs';
import { compileField } from '../../hid/compile-field.ts';
import type { FieldLocation } from '../../hid/report-field.ts';
import type { ReportBatch } from '../../report-batch.ts';
import type { ReportSource } from '../../report-source.ts';
import type { LooseReport } from '../pack-reports.ts';

/** Reports in order of arrival, all devices together. */
export type Taped = readonly LooseReport[];

/** Longest stretch that is kept, so that a long pause at a question fills no memory. */
const KEPT_US = 30e6;

/** Listens to a source and keeps the reports of one movement at a time, and the last one of each kind. */
export class ReportTape {
  readonly #subscription: Subscription;
  readonly #last: Map<string, LooseReport> = new Map();
  #kept: LooseReport[] = [];
  #error: unknown = null;

  constructor(source: ReportSource) {
    this.#subscription = source.batches$.subscribe({
      next: (batch) => this.#take(batch),
      error: (error) => {
        this.#error = error;
      },
    });
  }

  /** Forgets what was kept. */
  start(): void {
    this.#kept = [];
  }

  /** What came since `start`, at most half a minute of it. @throws what the source failed with. */
  take(): Taped {
    if (this.#error !== null) throw this.#error;
    return this.#kept;
  }

  /** What a field reads now; null before its device has sent it. */
  latest(device: number, field: FieldLocation): number | null {
    const report = this.#last.get(`${device} ${field.reportId}`);
    return report === undefined ? null : compileField(field)(report.bytes, 0, report.bytes.length);
  }

  stop(): void {
    this.#subscription.unsubscribe();
  }

  #take(batch: ReportBatch): void {
    for (let i = 0; i < batch.count; i++) {
      const start = batch.offset[i]!;
      const report = {
        device: batch.device[i]!,
        timeUs: batch.timeUs[i]!,
        bytes: batch.bytes.slice(start, start + batch.length[i]!),
      };
      this.#kept.push(report);
      // Whether the first byte is an id is not known here, so it is kept as both.
      this.#last.set(`${report.device} 0`, report);
      this.#last.set(`${report.device} ${report.bytes[0]}`, report);
    }
    const first = this.#kept.findIndex(({ timeUs }) => timeUs >= batch.untilUs - KEPT_US);
    if (first > 0) this.#kept.splice(0, first);
  }
}

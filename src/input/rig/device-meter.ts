import type { DeviceHealth } from '../../drill/drill-view.ts';
import type { Gap } from '../../trace/gap.ts';
import { GapWatch } from './gap-watch.ts';
import { IntervalMeter, type IntervalReading } from './interval-meter.ts';
import { RepeatWatch } from './repeat-watch.ts';

/** What is known of a device's reporting; null or 0 where too little was heard. */
export interface DeviceReading extends DeviceHealth, Nullable<IntervalReading> {
  readonly reports: number;
  /** Silences longer than 50 ms of a device that streams at rest. */
  readonly gaps: number;
  /** True once the device was seen to repeat itself at rest; silence means nothing before that. */
  readonly streamsAtRest: boolean;
}

type Nullable<T> = { readonly [K in keyof T]: T[K] | null };

const UNHEARD = { rateHz: null, uniqueRateHz: null, p99GapMs: null, jitterMs: null };

/** Measures how one device reports, whatever its bytes mean. */
export class DeviceMeter {
  readonly #name: string;
  readonly #repeats: RepeatWatch;
  readonly #intervals: IntervalMeter = new IntervalMeter();
  readonly #gaps: GapWatch = new GapWatch();
  #reports = 0;
  #connected = true;

  /** @param numbered True where the first byte of a report is its id. */
  constructor(name: string, numbered: boolean) {
    this.#name = name;
    this.#repeats = new RepeatWatch(numbered);
  }

  report(timeUs: number, bytes: Uint8Array, start: number, length: number): void {
    const repeated = this.#repeats.repeats(bytes, start, length);
    this.#reports += 1;
    this.#intervals.report(timeUs, !repeated);
    this.#gaps.report(timeUs, repeated);
  }

  /** All reports up to this time were given. */
  until(timeUs: number): void {
    this.#gaps.until(timeUs);
  }

  /** Gaps, and abutting pieces of an open one, since the last call. */
  takeGaps(): readonly Gap[] {
    return this.#gaps.take();
  }

  connect(connected: boolean): void {
    this.#connected = connected;
    this.#gaps.reset();
    this.#intervals.reset();
  }

  read(): DeviceReading {
    return {
      name: this.#name,
      connected: this.#connected,
      waitingForMovement: this.#reports === 0,
      reports: this.#reports,
      gaps: this.#gaps.gaps,
      streamsAtRest: this.#gaps.streams,
      ...(this.#intervals.read() ?? UNHEARD),
    };
  }
}

/** Intervals kept: one second at 1 kHz. */
const WINDOW = 1024;

/** A longer silence is a pause between movements, not an interval of the device. */
const PAUSE_US = 250_000;

/** How a device reports while it moves or streams. */
export interface IntervalReading {
  /** Reports per second. */
  readonly rateHz: number;
  /** Reports per second that said something new. */
  readonly uniqueRateHz: number;
  /** 99 of 100 intervals are not longer. */
  readonly p99GapMs: number;
  /** Standard deviation of the intervals. */
  readonly jitterMs: number;
}

/** Measures the last intervals between reports of one device. */
export class IntervalMeter {
  readonly #intervalUs: Float64Array = new Float64Array(WINDOW);
  readonly #isNew: Uint8Array = new Uint8Array(WINDOW);
  #count = 0;
  #lastUs: number | null = null;

  report(timeUs: number, isNew: boolean): void {
    const intervalUs = this.#lastUs === null ? Number.POSITIVE_INFINITY : timeUs - this.#lastUs;
    this.#lastUs = timeUs;
    if (intervalUs > PAUSE_US) return;
    this.#intervalUs[this.#count % WINDOW] = intervalUs;
    this.#isNew[this.#count % WINDOW] = isNew ? 1 : 0;
    this.#count += 1;
  }

  /** Null before two reports followed each other, and where they all came at one instant. */
  read(): IntervalReading | null {
    const kept = Math.min(this.#count, WINDOW);
    const intervals = this.#intervalUs.slice(0, kept).sort();
    let [totalUs, fresh] = [0, 0];
    for (let i = 0; i < kept; i++) {
      totalUs += intervals[i]!;
      fresh += this.#isNew[i]!;
    }
    if (totalUs === 0) return null;
    return {
      rateHz: (kept / totalUs) * 1e6,
      uniqueRateHz: (fresh / totalUs) * 1e6,
      p99GapMs: (intervals[Math.ceil(0.99 * kept) - 1] ?? 0) / 1000,
      jitterMs: standardDeviation(intervals, totalUs / kept) / 1000,
    };
  }

  /** The device went: its next report begins a new run. */
  reset(): void {
    this.#lastUs = null;
  }
}

function standardDeviation(values: Float64Array, mean: number): number {
  if (values.length < 2) return 0;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return Math.sqrt(squares / (values.length - 1));
}

/** Intervals kept: a few seconds of a fast axis. */
const WINDOW = 2048;
/** A longer silence is a foot that holds still. */
const STILL_US = 50_000;
/** Intervals between changes before anything is said. */
const ENOUGH = 20;
/** The fastest tenth of the changes comes from fast movement, in which every new value differs from the last. */
const FASTEST = 0.1;

/** Finds how often a sensor really measures, from how fast its value changes at best. */
export class NewsMeter {
  readonly #intervalUs: Float64Array = new Float64Array(WINDOW);
  #count = 0;
  #lastUs: number | null = null;

  /** The value changed. */
  change(timeUs: number): void {
    const intervalUs = this.#lastUs === null ? Number.POSITIVE_INFINITY : timeUs - this.#lastUs;
    this.#lastUs = timeUs;
    if (intervalUs > STILL_US) return;
    this.#intervalUs[this.#count % WINDOW] = intervalUs;
    this.#count += 1;
  }

  /** Milliseconds between two measurements; null while too little moved. */
  get newsMs(): number | null {
    const kept = Math.min(this.#count, WINDOW);
    if (kept < ENOUGH) return null;
    const sorted = this.#intervalUs.slice(0, kept).sort();
    return sorted[Math.floor(FASTEST * kept)]! / 1000;
  }
}

import type { Gap } from '../../trace/gap.ts';

/** Silence longer than this is a gap for a device that streams at rest. */
const GAP_US = 50_000;

/**
 * Repeats within `GAP_US` after which a device is taken to stream at rest. A device that reports only on change never
 * repeats itself that fast, so silence says nothing about it.
 */
const REPEATS_OF_A_STREAM = 20;

/** Watches one device for silence that cannot be rest. */
export class GapWatch {
  #repeats = 0;
  #lastUs: number | null = null;
  /** End of the silence that was given out already. */
  #toldUs = Number.NEGATIVE_INFINITY;
  #gaps = 0;
  #pending: Gap[] = [];

  get streams(): boolean {
    return this.#repeats >= REPEATS_OF_A_STREAM;
  }

  /** Gaps so far, an open one included. */
  get gaps(): number {
    return this.#gaps;
  }

  /** @param repeated True where the bytes are those of the report before. */
  report(timeUs: number, repeated: boolean): void {
    this.until(timeUs);
    if (repeated && this.#lastUs !== null && timeUs - this.#lastUs <= GAP_US) this.#repeats += 1;
    this.#lastUs = timeUs;
  }

  /** Nothing was said until now. */
  until(timeUs: number): void {
    const lastUs = this.#lastUs;
    if (!this.streams || lastUs === null || timeUs - lastUs <= GAP_US) return;
    const fromUs = Math.max(lastUs, this.#toldUs);
    if (fromUs >= timeUs) return;
    if (fromUs === lastUs) this.#gaps += 1;
    this.#pending.push({ fromS: fromUs / 1e6, toS: timeUs / 1e6 });
    this.#toldUs = timeUs;
  }

  /** Gaps, and pieces of an open gap, since the last call. */
  take(): readonly Gap[] {
    if (this.#pending.length === 0) return NO_GAPS;
    const pending = this.#pending;
    this.#pending = [];
    return pending;
  }

  /** The device went: silence is no gap until it has shown again that it streams. */
  reset(): void {
    this.#repeats = 0;
    this.#lastUs = null;
  }
}

const NO_GAPS: readonly Gap[] = [];

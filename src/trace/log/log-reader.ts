import { joined } from './log-lines.ts';
import { LogRows } from './log-rows.ts';
import type { LogSummary, LogWish } from './log-settings.ts';
import type { LoggedZone } from './logged-zone.ts';
import { planLog } from './plan-log.ts';

/** What the writing of the file is judged by, whatever the size of the chunks. */
const HEAD_BYTES = 65_536;

/**
 * Reads a logged CSV file in chunks of bytes and hands out its braking zones as it finds them. Any split of the bytes
 * gives the same result. Holds the first 64 KiB, one line and one zone, never the file.
 *
 * `push` and `end` throw `LogRefused` with line and column of what cannot be used; zones handed out before are void
 * then.
 */
export class LogReader {
  readonly #wish: LogWish;
  readonly #onZone: (zone: LoggedZone) => void;
  #head: Uint8Array = new Uint8Array(0);
  #rows: LogRows | null = null;

  constructor(wish: LogWish, onZone: (zone: LoggedZone) => void) {
    this.#wish = wish;
    this.#onZone = onZone;
  }

  push(chunk: Uint8Array): void {
    if (this.#rows === null) this.#gather(chunk);
    else this.#rows.push(chunk);
  }

  end(): LogSummary {
    if (this.#rows === null) this.#open();
    return this.#rows!.end();
  }

  #gather(chunk: Uint8Array): void {
    this.#head = joined(this.#head, chunk);
    if (this.#head.length > HEAD_BYTES) this.#open();
  }

  #open(): void {
    const whole = this.#head.length <= HEAD_BYTES;
    const plan = planLog(this.#head.subarray(0, HEAD_BYTES), whole, this.#wish);
    this.#rows = new LogRows(plan, this.#wish, this.#onZone);
    this.#rows.push(this.#head.subarray(plan.skipBytes));
    this.#head = new Uint8Array(0);
  }
}

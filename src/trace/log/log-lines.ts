const NEWLINE = 10;
/** No row of numbers is longer; a file without line ends must not be gathered into memory. */
const LONGEST_LINE = 65_536;

/** Takes `bytes[from, to)`, one line without its end. */
export type OnLine = (bytes: Uint8Array, from: number, to: number) => void;

/**
 * Cuts chunks of bytes into lines. Where a chunk ends within a line, its beginning is kept until the next one, so that
 * the lines are the same however the bytes were split.
 */
export class LogLines {
  #kept: Uint8Array = new Uint8Array(0);
  readonly #onLine: OnLine;
  readonly #onTooLong: () => never;

  constructor(onLine: OnLine, onTooLong: () => never) {
    this.#onLine = onLine;
    this.#onTooLong = onTooLong;
  }

  push(chunk: Uint8Array): void {
    const bytes = this.#kept.length === 0 ? chunk : joined(this.#kept, chunk);
    let from = 0;
    for (;;) {
      const end = bytes.indexOf(NEWLINE, from);
      if (end < 0) break;
      if (end - from > LONGEST_LINE) this.#onTooLong();
      this.#onLine(bytes, from, end);
      from = end + 1;
    }
    if (bytes.length - from > LONGEST_LINE) this.#onTooLong();
    this.#kept = new Uint8Array(bytes.subarray(from));
  }

  /** The last line, where it has no end of its own. */
  end(): void {
    if (this.#kept.length > 0) this.#onLine(this.#kept, 0, this.#kept.length);
    this.#kept = new Uint8Array(0);
  }
}

/** One array of bytes after the other. */
export function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

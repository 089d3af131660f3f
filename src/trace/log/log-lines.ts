const NEWLINE = 10;
/** No row of numbers is longer; a file without line ends must not be gathered into memory. */
const LONGEST_LINE = 65_536;

/** Takes `bytes[from, to)`, one line without its end. */
type OnLine = (bytes: Uint8Array, from: number, to: number) => void;

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
    let from = this.#kept.length === 0 ? 0 : this.#complete(chunk);
    for (;;) {
      const end = chunk.indexOf(NEWLINE, from);
      if (end < 0) break;
      this.#take(chunk, from, end);
      from = end + 1;
    }
    if (from < chunk.length) this.#keep(chunk.subarray(from));
  }

  /** Ends the line that was begun, where the chunk has its end. @returns where the next line begins */
  #complete(chunk: Uint8Array): number {
    const end = chunk.indexOf(NEWLINE);
    if (end < 0) return 0;
    const line = joined(this.#kept, chunk.subarray(0, end));
    this.#kept = new Uint8Array(0);
    this.#take(line, 0, line.length);
    return end + 1;
  }

  #take(bytes: Uint8Array, from: number, to: number): void {
    if (to - from > LONGEST_LINE) this.#onTooLong();
    this.#onLine(bytes, from, to);
  }

  #keep(beginning: Uint8Array): void {
    this.#kept = joined(this.#kept, beginning);
    if (this.#kept.length > LONGEST_LINE) this.#onTooLong();
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

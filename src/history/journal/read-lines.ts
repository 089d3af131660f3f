import { readSync } from 'node:fs';

export interface FileLine {
  /** Without the line feed. */
  readonly text: string;
  /** Bytes from the start of the file. */
  readonly offset: number;
  /** Bytes with the line feed. */
  readonly length: number;
}

const CHUNK_BYTES = 256 * 1024;

/** The finished lines of a file from an offset on. What stands after the last line feed is still being written. */
export function* readLines(fd: number, from: number): Iterable<FileLine> {
  let offset = from;
  let pending = Buffer.alloc(0);
  for (;;) {
    const chunk = Buffer.alloc(CHUNK_BYTES);
    const count = readSync(fd, chunk, 0, CHUNK_BYTES, offset + pending.length);
    if (count === 0) return;
    pending = Buffer.concat([pending, chunk.subarray(0, count)]);
    for (let end = pending.indexOf(10); end >= 0; end = pending.indexOf(10)) {
      yield { text: pending.toString('utf8', 0, end), offset, length: end + 1 };
      pending = pending.subarray(end + 1);
      offset += end + 1;
    }
  }
}

import type { WriteStream } from 'node:fs';
import { finished } from 'node:stream/promises';
import { Problem } from '../../problem.ts';

/** Collects lines for a file, holding back the first error until it is closed. */
export class Recorder {
  readonly #file: string;
  readonly #stream: WriteStream;
  #error: Error | null = null;

  constructor(file: string, stream: WriteStream) {
    this.#file = file;
    this.#stream = stream.on('error', (error) => {
      this.#error ??= error;
    });
  }

  write(line: string): void {
    if (this.#stream.writable) this.#stream.write(line);
  }

  async close(): Promise<void> {
    this.#stream.end();
    await finished(this.#stream).catch(() => undefined);
    if (this.#error === null) return;
    throw new Problem(`the recording is not complete: ${this.#error.message}`, {
      where: this.#file,
      next: 'Make room on the disk and record again; what was written can be replayed.',
    });
  }
}

import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { hasOpen } from './has-open.ts';

const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;

/** The built program, started with a command line. */
export class Program {
  output = '';
  errors = '';
  readonly exitCode: Promise<number | null>;
  readonly #child: ChildProcessWithoutNullStreams;

  constructor(...args: string[]) {
    this.#child = spawn(process.execPath, [MAIN, ...args]);
    this.#child.stdout.on('data', (chunk: Buffer) => {
      this.output += chunk.toString();
    });
    this.#child.stderr.on('data', (chunk: Buffer) => {
      this.errors += chunk.toString();
    });
    this.exitCode = once(this.#child, 'close').then(([code]) => code as number | null);
  }

  /** A line on its stdin. */
  answer(line: string): void {
    this.#child.stdin.write(`${line}\n`);
  }

  /** Whether it has this file or device open. */
  hasOpen(path: string): boolean {
    return hasOpen(this.#child.pid!, path);
  }

  kill(): void {
    this.#child.kill();
  }
}

import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { monotonicUs } from '../../src/input/reader/monotonic-us.ts';
import type { Size } from '../../src/screens/cell-grid.ts';

/** Bytes that came out of a terminal, and when. */
export interface Written {
  readonly atUs: number;
  readonly bytes: Buffer;
}

/**
 * A program on a pseudo-terminal of its own that nothing is drawn by: what it writes is kept with the time at which it
 * came out. The terminal is made by `script`, which is part of every Debian.
 */
export class PseudoTerminal {
  readonly startedUs: number;
  readonly written: Written[] = [];
  readonly #script: ChildProcessWithoutNullStreams;
  #listener: ((written: Written) => void) | null = null;

  constructor(command: readonly string[], { cols, rows }: Size, env: NodeJS.ProcessEnv = {}) {
    const line = `stty cols ${cols} rows ${rows}; exec ${command.map(quoted).join(' ')}`;
    const { PATH } = process.env;
    this.startedUs = monotonicUs();
    this.#script = spawn('script', ['--quiet', '--flush', '--command', line, '/dev/null'], {
      env: { PATH, SHELL: '/bin/sh', LANG: 'C.UTF-8', TERM: 'xterm-256color', ...env },
    });
    this.#script.stderr.pipe(process.stderr);
    this.#script.stdout.on('data', (bytes: Buffer) => {
      const written = { atUs: monotonicUs(), bytes };
      this.written.push(written);
      this.#listener?.(written);
    });
  }

  /** The program's process. */
  get pid(): number {
    const { pid } = this.#script;
    return Number(readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ')[0]);
  }

  /** All that was written so far. */
  get text(): string {
    return Buffer.concat(this.written.map(({ bytes }) => bytes)).toString();
  }

  /** Resolves with the first bytes, also in the past, after which the whole text fits. */
  async until(fits: (text: string) => boolean): Promise<Written> {
    if (fits(this.text)) return this.written.at(-1)!;
    return new Promise((resolve, reject) => {
      this.#script.once('exit', () => reject(new Error(`it ended:\n${this.text}`)));
      this.#listener = (written) => {
        if (!fits(this.text)) return;
        this.#listener = null;
        resolve(written);
      };
    });
  }

  /** Ends the program. */
  async close(): Promise<void> {
    const gone = this.#script.exitCode === null ? once(this.#script, 'exit') : null;
    process.kill(this.pid, 'SIGTERM');
    await gone;
  }
}

function quoted(word: string): string {
  return `'${word.replaceAll("'", "'\\''")}'`;
}

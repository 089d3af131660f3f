import { type ChildProcess, spawn } from 'node:child_process';
import type { PlayerCommand } from './player-command.ts';

/** More than this, waiting in the pipe, would be heard too late to be of use. */
const MOST_WAITING_BYTES = 32_768;

/** A running player. Nothing it does is an error of the drill: when it ends, sound ends. */
export class Player {
  readonly program: string;
  readonly #child: ChildProcess;
  /** Exit code, null where it was killed or could not be started. */
  readonly ended: Promise<number | null>;
  #isOver = false;
  #isMissing = false;

  /** @param onSaid gets what the player writes to its standard error */
  constructor({ program, args }: PlayerCommand, onSaid: (text: string) => void = () => {}) {
    this.program = program;
    this.#child = spawn(program, [...args], { stdio: ['pipe', 'ignore', 'pipe'] });
    this.#child.stderr?.setEncoding('utf8').on('data', onSaid);
    this.ended = new Promise((resolve) => {
      this.#child.once('error', (error: NodeJS.ErrnoException) => {
        this.#isMissing = error.code === 'ENOENT';
        resolve(null);
      });
      this.#child.once('exit', (code) => resolve(code));
    });
    void this.ended.then(() => {
      this.#isOver = true;
    });
    // A player that went leaves a broken pipe.
    this.#child.stdin?.on('error', () => {
      this.#isOver = true;
    });
  }

  /** True where no such program is installed; known once it has ended. */
  get isMissing(): boolean {
    return this.#isMissing;
  }

  /** Hands samples over; what the player is too slow for is left out. @returns false when it has ended */
  write(samples: Int16Array): boolean {
    const pipe = this.#child.stdin;
    if (this.#isOver || pipe === null || pipe.destroyed) return false;
    if (pipe.writableLength < MOST_WAITING_BYTES)
      pipe.write(Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength));
    return true;
  }

  /** No more samples: it plays what it has, and ends. */
  finish(): void {
    this.#child.stdin?.end();
  }

  stop(): void {
    this.#child.stdin?.destroy();
    this.#child.kill();
  }
}

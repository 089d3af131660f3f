import type { Worker } from 'node:worker_threads';
import { CLOSE_GUARD_MS } from './report-reader.ts';
import { CLOSE_ORDER } from './worker-message.ts';

/** How long the end of the process waits for devices to close. */
const EXIT_GUARD_MS = 2000;

/**
 * Ends the reader's worker. Only the worker can do it, after closing the devices: taking it down with a device open
 * never ends, and that is what the end of the process does. So the process, too, has the worker stop before it ends,
 * whether by `process.exit` or by an exception.
 */
export class WorkerStop {
  readonly #worker: Worker;
  readonly #closed: Int32Array;
  readonly #exited: Promise<void>;
  readonly #onProcessExit = (): void => this.#runNow();

  constructor(worker: Worker, closed: SharedArrayBuffer) {
    this.#worker = worker;
    this.#closed = new Int32Array(closed);
    this.#exited = new Promise((resolve) => worker.once('exit', () => resolve()));
    process.once('exit', this.#onProcessExit);
    void this.#exited.then(() => process.off('exit', this.#onProcessExit));
  }

  /** Resolves when the worker has ended, or when waiting longer makes no sense. Idempotent. */
  async run(): Promise<void> {
    this.#worker.postMessage(CLOSE_ORDER);
    let guard: NodeJS.Timeout | undefined;
    const late = new Promise<void>((resolve) => {
      guard = setTimeout(resolve, CLOSE_GUARD_MS);
    });
    await Promise.race([this.#exited, late]);
    clearTimeout(guard);
    // A worker that hangs in a driver must not keep the program running.
    this.#worker.unref();
  }

  /** In the last moment of the process, when nothing can be awaited any more. */
  #runNow(): void {
    this.#worker.postMessage(CLOSE_ORDER);
    Atomics.wait(this.#closed, 0, 0, EXIT_GUARD_MS);
    // With a device that does not close the process would never end by itself.
    if (Atomics.load(this.#closed, 0) === 0) process.kill(process.pid, 'SIGKILL');
  }
}

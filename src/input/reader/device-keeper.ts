import { cleanText } from '../discovery/clean-text.ts';
import type { RigDevice } from '../rig-device.ts';
import type { HidApi, HidHandle } from './hid-api.ts';
import { monotonicUs } from './monotonic-us.ts';
import type { EmitDeviceEvent } from './report-reader.ts';
import type { RingWriter } from './ring-writer.ts';

/** The kernel queues reports from opening on; those that are read at once when listening starts are old. */
const STALE_US = 5000;

/** Keeps one device of the rig open, under one number through every unplugging. */
export class DeviceKeeper {
  readonly identity: RigDevice['identity'];
  readonly #device: number;
  readonly #hid: HidApi;
  readonly #writer: RingWriter;
  readonly #onLost: EmitDeviceEvent;
  #handle: HidHandle | null = null;
  #path: string | null = null;
  #closed = false;
  #closing: Promise<void> = Promise.resolve();

  constructor(
    device: number,
    identity: RigDevice['identity'],
    { hid, writer, onLost }: { hid: HidApi; writer: RingWriter; onLost: EmitDeviceEvent },
  ) {
    this.identity = identity;
    this.#device = device;
    this.#hid = hid;
    this.#writer = writer;
    this.#onLost = onLost;
  }

  /** Where it is open, null while it is missing. */
  get path(): string | null {
    return this.#path;
  }

  /** Rejects with the library's words. */
  async open(path: string): Promise<void> {
    const handle = await this.#hid.open(path);
    if (this.#closed) return handle.close();
    this.#handle = handle;
    this.#path = path;
    this.#listen(handle);
  }

  /** Idempotent. */
  close(): Promise<void> {
    this.#closed = true;
    return this.#letGo();
  }

  #listen(handle: HidHandle): void {
    const freshUs = monotonicUs() + STALE_US;
    handle.on('error', (reason) => {
      // Any error ends reading: unplugged, whatever the words. A device says so more than once.
      if (this.#handle === handle) this.#lose(reason);
    });
    handle.on('data', (report) => {
      const nowUs = monotonicUs();
      if (nowUs >= freshUs) this.#writer.push(this.#device, nowUs, report);
    });
  }

  #lose(reason: unknown): void {
    const words = cleanText(reason instanceof Error ? reason.message : String(reason), 120);
    this.#onLost({ kind: 'lost', device: this.#device, atUs: monotonicUs(), reason: words });
    void this.#letGo();
  }

  /** Closes once: a second close of one handle is refused. Resolves when no handle is open any more. */
  #letGo(): Promise<void> {
    const handle = this.#handle;
    this.#handle = null;
    this.#path = null;
    if (handle === null) return this.#closing;
    const before = this.#closing;
    this.#closing = handle.close().then(
      () => before,
      () => before,
    );
    return this.#closing;
  }
}

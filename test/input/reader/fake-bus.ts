import type { HidRecord } from '../../../src/input/reader/hid-api.ts';

interface BusOptions {
  /** Says `closed` on stdout for each device that is closed. */
  readonly announces?: boolean;
  readonly loadFailure?: string;
  /** Where the thread under test has its Problem class. */
  readonly problemModule?: string;
}

export interface FakeDevice extends HidRecord {
  readonly path: string;
  /** In which words opening it is refused. */
  readonly refusal?: string;
  /** Closing it never ends. */
  readonly hangs?: boolean;
}

let buses = 0;

/** Moves the devices of a fake HID library that may be loaded on another thread. */
export class FakeBus {
  /** Address to give as `hidModule`. */
  readonly hidModule: string;
  /** Handles closed so far. */
  closes = 0;
  readonly #channel: InstanceType<typeof BroadcastChannel>;
  readonly #waiting: Map<number, (answer: unknown) => void> = new Map();
  #orders = 0;

  constructor(devices: readonly FakeDevice[], options: BusOptions = {}) {
    buses += 1;
    const channel = `fake-hid ${process.pid} ${process.hrtime.bigint()} ${buses}`;
    const setUp = JSON.stringify({ channel, devices, ...options });
    const fake = new URL('./fake-hid.mjs', import.meta.url).href;
    const module = `import { fakeLoadHid } from '${fake}'; export const loadHid = fakeLoadHid(${setUp});`;
    this.hidModule = `data:text/javascript,${encodeURIComponent(module)}`;
    this.#channel = new BroadcastChannel(channel);
    this.#channel.onmessage = (event: unknown) => this.#hear((event as MessageEvent).data);
  }

  report(path: string, ...reports: number[][]): Promise<unknown> {
    return this.#order({ order: 'report', path, reports });
  }

  /** An error event as the library gives it, in words or as an Error; the device stays listed. */
  fail(path: string, reason: string, asError: boolean = false): Promise<unknown> {
    return this.#order({ order: 'fail', path, reason, asError });
  }

  /** Takes it out; reading fails, twice. */
  unplug(path: string, reason: string = 'could not read from HID device'): Promise<unknown> {
    return this.#order({ order: 'unplug', path, reason });
  }

  plug(record: FakeDevice): Promise<unknown> {
    return this.#order({ order: 'plug', record });
  }

  /** How many devices are open. */
  handles(): Promise<unknown> {
    return this.#order({ order: 'handles' });
  }

  /** Throws on the library's thread, outside every handler. */
  crash(): Promise<unknown> {
    return this.#order({ order: 'crash' });
  }

  close(): void {
    this.#channel.close();
  }

  #order(order: object): Promise<unknown> {
    this.#orders += 1;
    const id = this.#orders;
    return new Promise((resolve) => {
      this.#waiting.set(id, resolve);
      this.#channel.postMessage({ ...order, id });
    });
  }

  #hear(data: { done?: number; answer?: unknown; closedOne?: boolean }): void {
    if (data.closedOne) this.closes += 1;
    if (data.done !== undefined) this.#waiting.get(data.done)?.(data.answer);
  }
}

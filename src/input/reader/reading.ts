import { identifyDevices } from '../discovery/identify-devices.ts';
import { sameDevice } from '../rig/same-device.ts';
import { DeviceKeeper } from './device-keeper.ts';
import type { HidApi } from './hid-api.ts';
import { monotonicUs } from './monotonic-us.ts';
import { OpenFailure, type ReadRequest } from './read-request.ts';
import type { EmitDeviceEvent } from './report-reader.ts';
import { RingWriter } from './ring-writer.ts';

/** The clock of whoever drains the ring goes on in silence by this step. */
const WATERMARK_MS = 4;
/** Reports that come as often as this move it themselves; then it is looked after less often, at most a frame apart. */
const STREAM_MS = 2;
const STREAMING_WATERMARK_MS = 16;
/** Listing devices costs 10 ms, on a bad bus seconds, and a device may be listed before it can be opened. */
const SEEK_MS = 1000;

/**
 * Reads devices into a ring on the thread it is called in. It keeps looking for a device that was unplugged, by
 * what the device is and not by where it was, and goes on under the same number.
 */
export class Reading {
  readonly #hid: HidApi;
  readonly #writer: RingWriter;
  readonly #emit: EmitDeviceEvent;
  readonly #keepers: readonly DeviceKeeper[];
  readonly #seekMs: number;
  #ticker: NodeJS.Timeout | undefined;
  #seeker: NodeJS.Timeout | undefined;
  #seeking: Promise<void> = Promise.resolve();
  #closed = false;

  /** @throws OpenFailure for the first device that cannot be opened; none is left open then. */
  static async start(
    hid: HidApi,
    request: ReadRequest,
    ring: SharedArrayBuffer,
    emit: EmitDeviceEvent,
  ): Promise<Reading> {
    const reading = new Reading(hid, request, ring, emit);
    try {
      await reading.#openAll(request);
      return reading;
    } catch (error) {
      await reading.close();
      throw error;
    }
  }

  private constructor(
    hid: HidApi,
    { devices, seekMs = SEEK_MS }: ReadRequest,
    ring: SharedArrayBuffer,
    emit: EmitDeviceEvent,
  ) {
    this.#hid = hid;
    this.#writer = new RingWriter(ring);
    this.#emit = emit;
    this.#seekMs = seekMs;
    const onLost: EmitDeviceEvent = (event) => {
      emit(event);
      this.#seekLater();
    };
    this.#keepers = devices.map(
      ({ identity }, i) => new DeviceKeeper(i, identity, { hid, writer: this.#writer, onLost }),
    );
  }

  /** Idempotent. Waits for the devices to close. */
  async close(): Promise<void> {
    this.#closed = true;
    clearTimeout(this.#ticker);
    clearTimeout(this.#seeker);
    await Promise.all(this.#keepers.map((keeper) => keeper.close()));
    await this.#seeking;
  }

  async #openAll({ devices }: ReadRequest): Promise<void> {
    for (const [i, { path }] of devices.entries()) {
      await this.#keepers[i]!.open(path).catch((error: unknown) => {
        throw new OpenFailure(i, error instanceof Error ? error.message : String(error));
      });
    }
    this.#tick();
  }

  #tick(): void {
    const nowUs = monotonicUs();
    this.#writer.advance(nowUs);
    const streams = nowUs - this.#writer.lastUs < 1000 * STREAM_MS;
    const nextMs = streams ? STREAMING_WATERMARK_MS : WATERMARK_MS;
    this.#ticker = setTimeout(() => this.#tick(), nextMs);
  }

  #seekLater(): void {
    if (this.#closed) return;
    clearTimeout(this.#seeker);
    this.#seeker = setTimeout(() => {
      this.#seeking = this.#seeking.then(() => this.#seek());
    }, this.#seekMs);
  }

  async #seek(): Promise<void> {
    const present = identifyDevices(await this.#hid.records().catch(() => []));
    for (const [device, keeper] of this.#keepers.entries()) {
      if (keeper.path !== null || this.#closed) continue;
      const taken = this.#keepers.map(({ path }) => path);
      const found = present.find(
        ({ identity, path }) => sameDevice(identity, keeper.identity) && !taken.includes(path),
      );
      if (found === undefined) continue;
      const opened = await keeper.open(found.path).then(
        () => true,
        () => false,
      );
      if (opened) this.#emit({ kind: 'back', device, atUs: monotonicUs() });
    }
    if (this.#keepers.some(({ path }) => path === null)) this.#seekLater();
  }
}

import type { ButtonEvent, RigBatch } from '../../trace/rig-batch.ts';
import type { ReportBatch } from '../report-batch.ts';
import type { DeviceEvent } from '../report-source.ts';
import type { RigDevice } from '../rig-device.ts';
import { checkRig } from './check-rig.ts';
import type { DeviceReading } from './device-meter.ts';
import { DeviceReader } from './device-reader.ts';
import type { AxisRole, Rig } from './rig.ts';
import { sameDevice } from './same-device.ts';
import { TrackBuffer } from './track-buffer.ts';

/** Health of one device of the rig, with what its bytes said that they must not. */
interface RigDeviceReading extends DeviceReading {
  /** Axis values outside the range the device describes; they were clamped. */
  readonly outOfRange: number;
}

/** Turns raw reports into what the rig said. */
export interface RigDecoder {
  /** Decodes the next batch of the source. Allocates per batch, not per sample. */
  decode(batch: ReportBatch): RigBatch;
  /** To be told of each event of the source, so that a lost device is shown as lost and its silence is no gap. */
  deviceEvent(event: DeviceEvent): void;
  /** How the rig's devices report, in the order of the source's devices. */
  health(): readonly RigDeviceReading[];
}

/**
 * Resolves a rig and the devices of one source into a decoder. Devices that have no part in the rig are ignored; roles
 * whose device is not there stay without samples, but for the brake.
 * @throws Problem where the brake is missing, a role is given twice or a calibration cannot be used.
 */
export function createRigDecoder(rig: Rig, devices: readonly RigDevice[]): RigDecoder {
  checkRig(rig, devices);
  return new ReportDecoder(rig, devices);
}

class ReportDecoder implements RigDecoder {
  readonly #tracks: Readonly<Record<AxisRole, TrackBuffer>> = {
    brake: new TrackBuffer(),
    throttle: new TrackBuffer(),
    clutch: new TrackBuffer(),
    steering: new TrackBuffer(),
  };
  readonly #readers: readonly DeviceReader[];
  readonly #brakeDevice: number;
  #edges: ButtonEvent[] = [];
  #untilUs = Number.NEGATIVE_INFINITY;

  constructor(rig: Rig, devices: readonly RigDevice[]) {
    this.#readers = devices.map(
      (device, i) => new DeviceReader(isTwin(devices, i) ? NOTHING : rig, device, this.#tracks),
    );
    this.#brakeDevice = this.#readers.findIndex((reader) => reader.isBrake);
  }

  decode(batch: ReportBatch): RigBatch {
    const untilUs = Math.max(this.#untilUs, batch.untilUs);
    for (let i = 0; i < batch.count; i++) this.#report(batch, i, untilUs);
    for (const reader of this.#readers) reader.meter.until(untilUs);
    this.#untilUs = untilUs;
    return this.#taken(batch.dropped);
  }

  deviceEvent(event: DeviceEvent): void {
    const reader = this.#readers[event.device];
    if (reader === undefined) return;
    this.#edges.push(...reader.connect(event.kind === 'back', (this.#untilUs + 1) / 1e6));
  }

  health(): readonly RigDeviceReading[] {
    return this.#readers
      .filter((reader) => reader.isPartOfRig)
      .map((reader) => ({ ...reader.meter.read(), outOfRange: reader.outOfRange }));
  }

  #report(batch: ReportBatch, i: number, untilUs: number): void {
    const reader = this.#readers[batch.device[i]!];
    if (reader?.isPartOfRig !== true) return;
    // A report may bear the very microsecond of the last watermark; samples of a batch are later than that.
    const timeUs = Math.min(untilUs, Math.max(batch.timeUs[i]!, this.#untilUs + 1));
    reader.report(timeUs, batch.bytes, batch.offset[i]!, batch.length[i]!, this.#edges);
  }

  #taken(dropped: number): RigBatch {
    const buttons = this.#edges;
    if (buttons.length > 0) this.#edges = [];
    const gaps = this.#readers.map((reader) => reader.meter.takeGaps());
    return {
      brake: this.#tracks.brake.take(),
      throttle: this.#tracks.throttle.take(),
      clutch: this.#tracks.clutch.take(),
      steering: this.#tracks.steering.take(),
      buttons: buttons.length > 0 ? buttons : NO_EDGES,
      gaps: gaps[this.#brakeDevice] ?? [],
      untilS: this.#untilUs / 1e6,
      dropped,
    };
  }
}

const NO_EDGES: readonly ButtonEvent[] = [];

/** What a rig without assignments wants of a device. */
const NOTHING: Rig = { axes: [], buttons: [], wheelLockDeg: null, foot: 'right', footwear: '' };

/** True for a device that cannot be told from an earlier one: two of them must not feed one pedal. */
function isTwin(devices: readonly RigDevice[], index: number): boolean {
  const own = devices[index]!.identity;
  return devices.findIndex(({ identity }) => sameDevice(identity, own)) < index;
}

import type { ButtonEvent } from '../../trace/rig-batch.ts';
import type { RigDevice } from '../rig-device.ts';
import { AxisReader } from './axis-reader.ts';
import { ButtonReader } from './button-reader.ts';
import { describedField, deviceFields } from './device-fields.ts';
import { DeviceMeter } from './device-meter.ts';
import type { AxisRole, Rig } from './rig.ts';
import { sameDevice } from './same-device.ts';
import type { TrackBuffer } from './track-buffer.ts';

/** All that the rig wants of one device. */
export class DeviceReader {
  readonly meter: DeviceMeter;
  readonly isBrake: boolean;
  readonly #axes: readonly AxisReader[];
  readonly #buttons: readonly ButtonReader[];

  /** @throws Problem where a calibration of this device cannot be used. */
  constructor(rig: Rig, device: RigDevice, tracks: Readonly<Record<AxisRole, TrackBuffer>>) {
    const axes = rig.axes.filter((axis) => sameDevice(axis.device, device.identity));
    const buttons = rig.buttons.filter((button) => sameDevice(button.device, device.identity));
    const fields = deviceFields(device);
    const numbered = [...fields, ...[...axes, ...buttons].map(({ field }) => field)].some(
      ({ reportId }) => reportId > 0,
    );
    this.meter = new DeviceMeter(device.name, numbered);
    this.isBrake = axes.some(({ role }) => role === 'brake');
    this.#axes = axes.map(
      (axis) =>
        new AxisReader(
          axis,
          rig.wheelLockDeg,
          describedField(fields, axis.field),
          tracks[axis.role],
        ),
    );
    this.#buttons = buttons.map((button) => new ButtonReader(button));
  }

  /** False for a device that is plugged in but has no part in the rig. */
  get isPartOfRig(): boolean {
    return this.#axes.length + this.#buttons.length > 0;
  }

  get outOfRange(): number {
    return this.#axes.reduce((sum, axis) => sum + axis.outOfRange, 0);
  }

  report(
    timeUs: number,
    bytes: Uint8Array,
    start: number,
    length: number,
    edges: ButtonEvent[],
  ): void {
    this.meter.report(timeUs, bytes, start, length);
    const timeS = timeUs / 1e6;
    for (const axis of this.#axes) axis.report(timeS, bytes, start, length);
    for (const button of this.#buttons) {
      const edge = button.report(timeS, bytes, start, length);
      if (edge !== null) edges.push(edge);
    }
  }

  /** Comes up with the buttons that were held when the device went. */
  connect(connected: boolean, timeS: number): readonly ButtonEvent[] {
    this.meter.connect(connected);
    return this.#buttons.flatMap((button) => button.release(timeS) ?? []);
  }
}

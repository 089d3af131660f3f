import type { ReportBatch } from '../../report-batch.ts';
import type { DeviceEvent } from '../../report-source.ts';
import type { RigDevice } from '../../rig-device.ts';
import { describedField, deviceFields } from '../device-fields.ts';
import { DeviceMeter, type DeviceReading } from '../device-meter.ts';
import type { Rig } from '../rig.ts';
import { sameDevice } from '../same-device.ts';
import { AxisMonitor, type AxisReading, type CheckPhase } from './axis-monitor.ts';

export interface MonitoredDevice extends DeviceReading {
  readonly axes: readonly AxisReading[];
}

/** What a rig did while it was watched. */
export interface RigReading {
  /** Seconds of the source's clock since the first batch. */
  readonly elapsedS: number;
  readonly dropped: number;
  readonly phase: CheckPhase;
  readonly devices: readonly MonitoredDevice[];
}

/** Seconds after the first batch. */
interface CheckTimes {
  /** Until then nothing is touched. */
  readonly restS: number;
  /** From then on nothing is touched again. */
  readonly endS: number;
}

interface Watched {
  readonly meter: DeviceMeter;
  readonly axes: readonly AxisMonitor[];
}

/** Watches all devices of a source, and the axes that the rig assigns. */
export class RigMonitor {
  readonly #devices: readonly Watched[];
  readonly #times: CheckTimes;
  #startUs: number | null = null;
  #untilUs = 0;
  #dropped = 0;

  /**
   * @param rig Null where none was set up: the devices are watched all the same.
   * @throws Problem where a calibration cannot be used.
   */
  constructor(rig: Rig | null, devices: readonly RigDevice[], times: CheckTimes) {
    this.#times = times;
    this.#devices = devices.map((device) => watch(rig, device));
  }

  batch(batch: ReportBatch): void {
    this.#startUs ??= batch.untilUs;
    this.#untilUs = batch.untilUs;
    this.#dropped = batch.dropped;
    for (let i = 0; i < batch.count; i++) this.#report(batch, i);
    for (const { meter, axes } of this.#devices) {
      meter.until(batch.untilUs);
      meter.takeGaps();
      for (const axis of axes) axis.until(batch.untilUs);
    }
  }

  deviceEvent(event: DeviceEvent): void {
    this.#devices[event.device]?.meter.connect(event.kind === 'back');
  }

  read(): RigReading {
    return {
      elapsedS: this.#startUs === null ? 0 : (this.#untilUs - this.#startUs) / 1e6,
      dropped: this.#dropped,
      phase: this.#phaseAt(this.#untilUs),
      devices: this.#devices.map(({ meter, axes }) => ({
        ...meter.read(),
        axes: axes.map((axis) => axis.read()),
      })),
    };
  }

  #report(batch: ReportBatch, i: number): void {
    const watched = this.#devices[batch.device[i]!];
    if (watched === undefined) return;
    const [timeUs, start, length] = [batch.timeUs[i]!, batch.offset[i]!, batch.length[i]!];
    const phase = this.#phaseAt(timeUs);
    watched.meter.report(timeUs, batch.bytes, start, length);
    for (const axis of watched.axes) axis.report(timeUs, phase, batch.bytes, start, length);
  }

  #phaseAt(timeUs: number): CheckPhase {
    const elapsedS = (timeUs - (this.#startUs ?? timeUs)) / 1e6;
    if (elapsedS < this.#times.restS) return 'rest';
    return elapsedS < this.#times.endS ? 'move' : 'end';
  }
}

function watch(rig: Rig | null, device: RigDevice): Watched {
  const fields = deviceFields(device);
  const own = (rig?.axes ?? []).filter((axis) => sameDevice(axis.device, device.identity));
  const numbered = [...fields, ...own.map(({ field }) => field)].some(
    ({ reportId }) => reportId > 0,
  );
  return {
    meter: new DeviceMeter(device.name, numbered),
    axes: own.map(
      (axis) =>
        new AxisMonitor(axis, rig?.wheelLockDeg ?? null, describedField(fields, axis.field)),
    ),
  };
}

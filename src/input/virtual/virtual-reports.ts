import type { FieldLocation } from '../hid/report-field.ts';
import type { ReportBatch } from '../report-batch.ts';
import type { Controls } from './controls.ts';
import { packBits } from './pack-bits.ts';
import { ReportColumns } from './report-columns.ts';
import { DRIVER_STEP_S } from './simulated-driver.ts';
import {
  LEFT_PADDLE,
  NEXT_BUTTON,
  PEDAL_AXES,
  PEDAL_HZ,
  type PedalAxis,
  type PedalBits,
  pedalField,
  STEERING_FIELD,
  WHEEL_HZ,
  WHEEL_REPORT_ID,
  wheelButtonField,
} from './virtual-devices.ts';
import { LEFT_STOP_COUNTS, pedalCounts, VIRTUAL_LOCK_DEG } from './virtual-rig.ts';

const PEDALS = 0;
const WHEEL = 1;
const WHEEL_BYTES = 5;
const PADDLE_FIELD = wheelButtonField(LEFT_PADDLE);
const NEXT_FIELD = wheelButtonField(NEXT_BUTTON);
const STEPS_PER_WHEEL_REPORT = PEDAL_HZ / WHEEL_HZ;

/** Microseconds between two reports of the pedals. */
export const STEP_US: number = 1e6 * DRIVER_STEP_S;

/** Whoever moves the controls of the virtual devices. */
export interface VirtualMover {
  /** Moves on to this time, never back, and says where feet and hands are then. */
  stepTo(timeS: number): Readonly<Controls>;
}

/** What the virtual devices send while the driver moves them, as bytes. */
export class VirtualReports {
  readonly #driver: VirtualMover;
  readonly #fields: readonly { readonly axis: PedalAxis; readonly field: FieldLocation }[];
  readonly #pedalBytes: number;
  readonly #rest: number;
  readonly #span: number;
  #step = 0;

  constructor(driver: VirtualMover, bits: PedalBits) {
    const { rest, full } = pedalCounts(bits);
    this.#driver = driver;
    this.#fields = PEDAL_AXES.map((axis) => ({ axis, field: pedalField(axis, bits) }));
    this.#pedalBytes = Math.ceil((PEDAL_AXES.length * bits) / 8);
    this.#rest = rest;
    this.#span = full - rest;
  }

  /** The reports of the `steps` milliseconds that end at `untilUs`, the last one included. */
  next(steps: number, untilUs: number): ReportBatch {
    const size = steps * (this.#pedalBytes + WHEEL_BYTES);
    const columns = new ReportColumns(2 * steps, size);
    for (let left = steps - 1; left >= 0; left--) {
      const timeUs = untilUs - left * STEP_US;
      const controls = this.#driver.stepTo(timeUs / 1e6);
      const pedals = columns.add(PEDALS, timeUs, this.#pedalBytes);
      this.#packPedals(columns.bytes, pedals, controls);
      if (++this.#step % STEPS_PER_WHEEL_REPORT === 0)
        packWheel(columns.bytes, columns.add(WHEEL, timeUs, WHEEL_BYTES), controls);
    }
    return columns.batch(untilUs);
  }

  #packPedals(bytes: Uint8Array, start: number, controls: Readonly<Controls>): void {
    for (const { axis, field } of this.#fields) {
      const counts = Math.round(this.#rest + this.#span * controls[axis]);
      packBits(bytes, start, field.bitOffset, field.bitSize, counts);
    }
  }
}

function packWheel(bytes: Uint8Array, start: number, controls: Readonly<Controls>): void {
  bytes[start] = WHEEL_REPORT_ID;
  const counts = Math.round((LEFT_STOP_COUNTS * controls.steeringDeg) / (VIRTUAL_LOCK_DEG / 2));
  packBits(bytes, start + 1, STEERING_FIELD.bitOffset, STEERING_FIELD.bitSize, counts);
  packButton(bytes, start + 1, PADDLE_FIELD, controls.leftPaddle);
  if (controls.nextButton) packButton(bytes, start + 1, NEXT_FIELD, true);
}

function packButton(
  bytes: Uint8Array,
  start: number,
  { bitOffset, bitSize }: FieldLocation,
  isDown: boolean,
): void {
  packBits(bytes, start, bitOffset, bitSize, isDown ? 1 : 0);
}

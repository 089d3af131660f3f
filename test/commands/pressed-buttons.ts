import { Subject } from 'rxjs';
import type { ReportBatch } from '../../src/input/report-batch.ts';
import type { ReportSource } from '../../src/input/report-source.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { DRIVER_PRESETS } from '../../src/input/virtual/driver-preset.ts';
import { SimulatedDriver } from '../../src/input/virtual/simulated-driver.ts';
import { virtualPedals, virtualWheel } from '../../src/input/virtual/virtual-devices.ts';
import { VirtualReports } from '../../src/input/virtual/virtual-reports.ts';
import { virtualRig } from '../../src/input/virtual/virtual-rig.ts';
import type { ButtonAction } from '../../src/trace/rig-batch.ts';

const WHEEL = 1;
/** Report id, two bytes of steering, then a bit per button: USB HID 1.11, section 8.4. */
const FIRST_BUTTON_BIT = 24;

/** The virtual rig with jobs on its buttons, counted from 1 as on the wheel. */
export function rigWithJobs(jobs: Readonly<Record<number, ButtonAction>>): Rig {
  const rig = virtualRig();
  const buttons = rig.buttons.map((button, i) => ({ ...button, action: jobs[i + 1] ?? null }));
  return { ...rig, buttons };
}

/** The virtual devices under a simulated driver, with buttons that a test holds down in the wheel's own reports. */
export class PressedButtons {
  readonly source: ReportSource;
  /** Buttons held down, counted from 1. */
  readonly held: Set<number> = new Set();
  readonly #batches$: Subject<ReportBatch> = new Subject();
  readonly #reports: VirtualReports;
  #untilUs = 0;

  constructor() {
    const driver = new SimulatedDriver(DRIVER_PRESETS.skilled, 1);
    this.#reports = new VirtualReports(driver, 16);
    this.source = {
      label: 'by hand',
      devices: [virtualPedals(), virtualWheel()],
      batches$: this.#batches$,
      events$: new Subject(),
      simulated: true,
      see: (view) => driver.see(view),
      close: async () => this.#batches$.complete(),
    };
  }

  /** Lets the driver drive on. */
  play(seconds: number): void {
    for (let batches = Math.round(seconds / 0.008); batches > 0; batches--) {
      this.#untilUs += 8000;
      const batch = this.#reports.next(8, this.#untilUs);
      for (let i = 0; i < batch.count; i++)
        if (batch.device[i] === WHEEL) this.#hold(batch.bytes, batch.offset[i]!);
      this.#batches$.next(batch);
    }
  }

  /** Holds a button for 80 ms. */
  press(button: number): void {
    this.held.add(button);
    this.play(0.08);
    this.held.delete(button);
    this.play(0.08);
  }

  #hold(bytes: Uint8Array, start: number): void {
    for (const button of this.held) {
      const bit = FIRST_BUTTON_BIT + button - 1;
      bytes[start + (bit >> 3)]! |= 1 << (bit & 7);
    }
  }
}

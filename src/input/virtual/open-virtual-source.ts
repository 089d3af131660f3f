import { from, NEVER, ReplaySubject, share, takeUntil } from 'rxjs';
import type { ReportSource } from '../report-source.ts';
import { DRIVER_PRESETS, type DriverName } from './driver-preset.ts';
import { type Pace, pacedBatches } from './paced-batches.ts';
import { type Practised, SimulatedDriver } from './simulated-driver.ts';
import { type PedalBits, virtualPedals, virtualWheel } from './virtual-devices.ts';
import { VirtualReports } from './virtual-reports.ts';

export interface VirtualSourceOptions {
  readonly preset: DriverName;
  /** Any integer; the same seed at simulated pace gives the same bytes. */
  readonly seed: number;
  readonly pace: Pace;
  /** Bits of the pedals' axes; 16 unless given. */
  readonly bits?: PedalBits;
  /** What the driver learned before; a driver who is new here unless given. */
  readonly practised?: Practised;
}

/** A simulated driver on simulated devices, who looks at what `see` is given. Fits `virtualRig(bits)`. */
export function openVirtualSource(options: VirtualSourceOptions): ReportSource {
  const { preset, seed, pace, bits = 16, practised = null } = options;
  const driver = new SimulatedDriver(DRIVER_PRESETS[preset], seed, practised);
  const closed$ = new ReplaySubject<void>(1);
  const batches = pacedBatches(pace, new VirtualReports(driver, bits));
  return {
    label: `virtual driver, ${preset}`,
    devices: [virtualPedals(bits), virtualWheel()],
    batches$: from(batches).pipe(takeUntil(closed$), share()),
    events$: NEVER.pipe(takeUntil(closed$)),
    simulated: pace === 'simulated',
    see: (view) => driver.see(view),
    close: async () => closed$.next(),
  };
}

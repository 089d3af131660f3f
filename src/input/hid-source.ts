import { defer, map, type Observable, ReplaySubject, type Subject, share, takeUntil } from 'rxjs';
import type { DrillView } from '../drill/drill-view.ts';
import { Problem } from '../problem.ts';
import { accessProblem } from './discovery/access-problem.ts';
import type { FoundDevice } from './discovery/found-device.ts';
import { evenTicks } from './even-ticks.ts';
import { startDirectReader } from './reader/direct-reader.ts';
import { OpenFailure, type ReadRequest } from './reader/read-request.ts';
import type { EmitDeviceEvent, ReportReader } from './reader/report-reader.ts';
import { RingReader } from './reader/ring-reader.ts';
import { startWorkerReader } from './reader/worker-reader.ts';
import type { ReportBatch } from './report-batch.ts';
import type { DeviceEvent, ReportSource } from './report-source.ts';
import type { RigDevice } from './rig-device.ts';

const BATCH_MS = 8;

export interface HidSourceOptions {
  /** Another worker than the compiled one; false reads on the calling thread, as happens where none starts. */
  readonly worker?: URL | false;
  /** Address of a module that stands in for the HID library (see `HidModule`). */
  readonly hidModule?: string;
  /** From one batch to the next, 8 ms by default: each has a cost of its own, whatever it holds. */
  readonly batchMs?: number;
}

/**
 * Opens devices for reading. Time stamps are microseconds of `process.hrtime`; what arrives while nobody is
 * subscribed to `batches$` is not delivered and does not count as dropped.
 *
 * @throws Problem where there is no device, the HID library does not load or a device does not open; nothing is left
 *   open then
 */
export async function openHidSource(
  devices: readonly FoundDevice[],
  options: HidSourceOptions = {},
): Promise<HidSource> {
  if (devices.length === 0) {
    throw new Problem('no pedals or wheel found', {
      next: 'Plug them in; `ebbline drill --source virtual` drives the virtual rig.',
    });
  }
  const events$ = new ReplaySubject<DeviceEvent>();
  const request = { devices: devices.map(address), hidModule: options.hidModule ?? null };
  try {
    const reader = await startReader(request, (event) => events$.next(event), options);
    return new HidSource(devices, reader, events$, options.batchMs ?? BATCH_MS);
  } catch (error) {
    throw error instanceof OpenFailure ? await openProblem(devices[error.device]!, error) : error;
  }
}

/** Reports of real devices, see `ReportSource`. */
export class HidSource implements ReportSource {
  readonly label: string;
  readonly devices: readonly RigDevice[];
  readonly batches$: Observable<ReportBatch>;
  readonly events$: Observable<DeviceEvent>;
  readonly simulated = false;
  /** Whether reading has a thread of its own. */
  readonly threaded: boolean;
  readonly #reader: ReportReader;
  readonly #events$: Subject<DeviceEvent>;
  readonly #closed$: Subject<void> = new ReplaySubject(1);

  constructor(
    devices: readonly RigDevice[],
    reader: ReportReader,
    events$: Subject<DeviceEvent>,
    batchMs: number,
  ) {
    this.devices = devices;
    this.label = devices.length === 1 ? '1 device' : `${devices.length} devices`;
    this.events$ = events$.asObservable();
    this.threaded = reader.threaded;
    this.#reader = reader;
    this.#events$ = events$;
    this.batches$ = drained(reader.ring, batchMs).pipe(takeUntil(this.#closed$), share());
  }

  see(_view: DrillView): void {}

  async close(): Promise<void> {
    this.#closed$.next();
    this.#closed$.complete();
    await this.#reader.close();
    this.#events$.complete();
  }
}

/** The ring's batches from the moment of subscription. */
function drained(ring: SharedArrayBuffer, batchMs: number): Observable<ReportBatch> {
  const reader = new RingReader(ring);
  return defer(() => {
    reader.discard();
    return evenTicks(batchMs).pipe(map(() => reader.drain()));
  });
}

async function startReader(
  request: ReadRequest,
  emit: EmitDeviceEvent,
  { worker }: HidSourceOptions,
): Promise<ReportReader> {
  if (worker === false) return startDirectReader(request, emit);
  try {
    return await startWorkerReader(request, emit, worker);
  } catch (error) {
    if (error instanceof Problem || error instanceof OpenFailure) throw error;
    return startDirectReader(request, emit);
  }
}

function address({ identity, path }: RigDevice): Pick<RigDevice, 'identity' | 'path'> {
  return { identity, path };
}

/** Why a device did not open, in the user's terms. */
async function openProblem(device: FoundDevice, failure: OpenFailure): Promise<Problem> {
  const denied = await accessProblem(device);
  if (denied !== null) return denied;
  return new Problem(`${device.name} does not open: ${failure.message}`, {
    where: device.path,
    next: 'Close other programs that use it, plug it in again and see `ebbline rig list`.',
  });
}

import { Worker } from 'node:worker_threads';
import { Problem } from '../../problem.ts';
import { monotonicUs } from './monotonic-us.ts';
import { OpenFailure, type ReadRequest } from './read-request.ts';
import type { EmitDeviceEvent, ReportReader } from './report-reader.ts';
import { createRing } from './ring-memory.ts';
import type { WorkerMessage, WorkerOrder } from './worker-message.ts';
import { WorkerStop } from './worker-stop.ts';

/** A worker that has not said anything by then will not. */
const START_MS = 15_000;

/**
 * Reads on a thread of its own, so that nothing the main thread does delays a time stamp.
 *
 * @param workerFile the worker's compiled module
 * @throws Problem where the HID library does not load; OpenFailure where a device does not open; any other error
 *   where the worker does not start
 */
export async function startWorkerReader(
  request: ReadRequest,
  emit: EmitDeviceEvent,
  workerFile: URL = compiledWorker(import.meta.url),
): Promise<ReportReader> {
  const ring = createRing();
  const order: WorkerOrder = { request, ring, closed: new SharedArrayBuffer(4) };
  const worker = new Worker(workerFile, { workerData: order, name: 'reader' });
  const stop = new WorkerStop(worker, order.closed);
  try {
    await untilReading(worker);
  } catch (error) {
    await stop.run();
    throw error;
  }
  passOn(worker, request, emit);
  return { ring, threaded: true, close: () => stop.run() };
}

/** Where the worker is compiled to: beside this file, or in dist/ when this file runs as source. */
function compiledWorker(here: string): URL {
  const file = here.endsWith('.ts')
    ? '../../../dist/input/reader/reader-worker.js'
    : './reader-worker.js';
  return new URL(file, here);
}

/** Resolves when all devices are open. */
function untilReading(worker: Worker): Promise<void> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error('the worker does not start')), START_MS);
    const fail = (error: Error): void => {
      clearTimeout(late);
      reject(error);
    };
    worker.once('error', fail);
    worker.once('exit', () => fail(new Error('the worker ended')));
    worker.on('message', (message: WorkerMessage) => {
      clearTimeout(late);
      if (message.kind === 'reading') resolve();
      if (message.kind === 'broken') fail(new Error(message.reason));
      if (message.kind === 'problem') fail(new Problem(message.what, { next: message.next }));
      if (message.kind === 'unopened') fail(new OpenFailure(message.device, message.reason));
    });
  });
}

/** What happens to the devices; a worker that breaks loses them all. */
function passOn(worker: Worker, { devices }: ReadRequest, emit: EmitDeviceEvent): void {
  const loseAll = (why: string): void => {
    const [atUs, reason] = [monotonicUs(), `reading stopped: ${why}`];
    for (const device of devices.keys()) emit({ kind: 'lost', device, atUs, reason });
  };
  worker.once('error', (error) => loseAll(error.message));
  worker.on('message', (message: WorkerMessage) => {
    if (message.kind === 'event') emit(message.event);
    if (message.kind === 'broken') loseAll(message.reason);
  });
}

import { Worker } from 'node:worker_threads';
import { Problem } from '../../problem.ts';
import { monotonicUs } from './monotonic-us.ts';
import { OpenFailure, type ReadRequest } from './read-request.ts';
import { CLOSE_GUARD_MS, type EmitDeviceEvent, type ReportReader } from './report-reader.ts';
import { createRing } from './ring-memory.ts';
import { CLOSE_ORDER, type WorkerMessage, type WorkerOrder } from './worker-message.ts';

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
  const order: WorkerOrder = { request, ring };
  const worker = new Worker(workerFile, { workerData: order, name: 'reader' });
  const exited = new Promise<void>((resolve) => worker.once('exit', () => resolve()));
  try {
    await untilReading(worker, emit);
  } catch (error) {
    await stop(worker, exited);
    throw error;
  }
  let closing: Promise<void> | null = null;
  const lose = (reason: string): void => {
    if (closing === null) loseAll(request, emit, reason);
  };
  worker.once('error', (error) => lose(`reading stopped: ${error.message}`));
  return {
    ring,
    threaded: true,
    close: () => {
      closing ??= stop(worker, exited);
      return closing;
    },
  };
}

/** Where the worker is compiled to: beside this file, or in dist/ when this file runs as source. */
function compiledWorker(here: string): URL {
  const file = here.endsWith('.ts')
    ? '../../../dist/input/reader/reader-worker.js'
    : './reader-worker.js';
  return new URL(file, here);
}

/** Resolves when all devices are open, and passes events on from then. */
function untilReading(worker: Worker, emit: EmitDeviceEvent): Promise<void> {
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
      if (message.kind === 'event') emit(message.event);
      if (message.kind === 'problem') fail(new Problem(message.what, { next: message.next }));
      if (message.kind === 'unopened') fail(new OpenFailure(message.device, message.reason));
    });
  });
}

/** The worker closes the devices before it ends; ending it with a device open can take the process down. */
async function stop(worker: Worker, exited: Promise<void>): Promise<void> {
  worker.postMessage(CLOSE_ORDER);
  const guard = setTimeout(() => void worker.terminate(), CLOSE_GUARD_MS);
  await exited;
  clearTimeout(guard);
}

function loseAll({ devices }: ReadRequest, emit: EmitDeviceEvent, reason: string): void {
  const atUs = monotonicUs();
  for (const device of devices.keys()) emit({ kind: 'lost', device, atUs, reason });
}

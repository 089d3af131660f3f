import { parentPort, workerData } from 'node:worker_threads';
import { Problem } from '../../problem.ts';
import { loadHidModule } from './load-hid-module.ts';
import { OpenFailure } from './read-request.ts';
import { Reading } from './reading.ts';
import { CLOSE_ORDER, type WorkerMessage, type WorkerOrder } from './worker-message.ts';

// The whole program of the reader's thread. However it ends, the devices are closed first: the HID library waits for its
// own threads when this one is taken down, and those read on until their device is closed.

const { request, ring, closed } = workerData as WorkerOrder;
const tell = (message: WorkerMessage): void => parentPort?.postMessage(message);

async function start(): Promise<Reading | null> {
  try {
    const hid = await loadHidModule(request.hidModule);
    const reading = await Reading.start(hid, request, ring, (event) =>
      tell({ kind: 'event', event }),
    );
    tell({ kind: 'reading' });
    return reading;
  } catch (error) {
    tell(failure(error));
    return null;
  }
}

function failure(error: unknown): WorkerMessage {
  if (error instanceof Problem) return { kind: 'problem', what: error.message, next: error.next };
  if (error instanceof OpenFailure)
    return { kind: 'unopened', device: error.device, reason: error.message };
  return { kind: 'broken', reason: error instanceof Error ? error.message : String(error) };
}

async function end(): Promise<void> {
  await (await reading)?.close();
  const flag = new Int32Array(closed);
  Atomics.store(flag, 0, 1);
  Atomics.notify(flag, 0);
  parentPort?.close();
}

process.on('uncaughtException', (error) => {
  tell({ kind: 'broken', reason: error.message });
  void end();
});
parentPort?.on('message', (order) => {
  if (order === CLOSE_ORDER) void end();
});
tell({ kind: 'started' });
const reading: Promise<Reading | null> = start();

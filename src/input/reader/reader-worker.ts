import { parentPort, workerData } from 'node:worker_threads';
import { Problem } from '../../problem.ts';
import { loadHidModule } from './load-hid-module.ts';
import { OpenFailure } from './read-request.ts';
import { Reading } from './reading.ts';
import { CLOSE_ORDER, type WorkerMessage, type WorkerOrder } from './worker-message.ts';

// The whole program of the reader's thread. It ends by itself once nothing is left to listen to.

const tell = (message: WorkerMessage): void => parentPort?.postMessage(message);

async function start({ request, ring }: WorkerOrder): Promise<Reading | null> {
  try {
    const hid = await loadHidModule(request.hidModule);
    const reading = await Reading.start(hid, request, ring, (event) =>
      tell({ kind: 'event', event }),
    );
    tell({ kind: 'reading' });
    return reading;
  } catch (error) {
    if (error instanceof Problem) {
      tell({ kind: 'problem', what: error.message, next: error.next });
    } else if (error instanceof OpenFailure) {
      tell({ kind: 'unopened', device: error.device, reason: error.message });
    } else throw error;
    return null;
  }
}

tell({ kind: 'started' });
const reading = start(workerData as WorkerOrder);
parentPort?.on('message', async (order) => {
  if (order !== CLOSE_ORDER) return;
  await (await reading)?.close();
  parentPort?.close();
});

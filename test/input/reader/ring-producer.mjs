// Fills a ring from a thread of its own, as fast as it can. Report n is 4 bytes of n and then n % 60 bytes of n % 251.
import { workerData } from 'node:worker_threads';

const { RingWriter } = await import(workerData.writerModule);
const writer = new RingWriter(workerData.memory);
const words = new Uint32Array(1);
const bytes = new Uint8Array(64);
for (let n = 0; n < workerData.reports; n++) {
  words[0] = n;
  const length = 4 + (n % 60);
  bytes.fill(n % 251, 4, length);
  bytes.set(new Uint8Array(words.buffer));
  const kept = writer.push(n % 3, n, bytes.subarray(0, length));
  if (n % 7 === 0) writer.advance(n);
  if (!kept) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 0.1);
}
writer.advance(workerData.reports);

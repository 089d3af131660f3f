import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { createRing } from '../../../src/input/reader/ring-memory.ts';
import { RingReader } from '../../../src/input/reader/ring-reader.ts';

const REPORTS = 100_000;

test('what another thread pushes arrives whole and in order, or is counted as dropped', async () => {
  const memory = createRing(256);
  const reader = new RingReader(memory);
  const writerModule = new URL('../../../dist/input/reader/ring-writer.js', import.meta.url).href;
  const worker = new Worker(new URL('./ring-producer.mjs', import.meta.url), {
    workerData: { memory, reports: REPORTS, writerModule },
  });
  const failed = new Promise<never>((_, reject) => worker.once('error', reject));

  let [received, last, untilUs, dropped] = [0, -1, 0, 0];
  const wrong: string[] = [];
  while (untilUs < REPORTS) {
    const batch = reader.drain();
    for (let i = 0; i < batch.count; i++) {
      const n = batch.timeUs[i]!;
      const at = batch.offset[i]!;
      const report = batch.bytes.subarray(at, at + batch.length[i]!);
      const sequence = new DataView(batch.bytes.buffer, at, 4).getUint32(0, true);
      const whole =
        sequence === n &&
        batch.device[i] === n % 3 &&
        report.length === 4 + (n % 60) &&
        report.subarray(4).every((byte) => byte === n % 251);
      // A watermark promises that nothing stamped earlier follows.
      if (!whole || n <= last || n < untilUs) wrong.push(`report ${n} after ${last}`);
      last = n;
    }
    received += batch.count;
    ({ untilUs, dropped } = batch);
    await Promise.race([setImmediate(), failed]);
  }
  expect(wrong).toEqual([]);
  expect(received + dropped).toBe(REPORTS);
  expect(received).toBeGreaterThan(256);
  await worker.terminate();
});

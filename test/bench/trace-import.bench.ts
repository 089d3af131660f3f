import { closeSync, openSync, readSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bench, describe } from 'vitest';
import { LogReader } from '../../src/trace/log/log-reader.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { csvOf, drive } from '../trace/log/driven-log.ts';

const folder = temporaryFolder('trace-bench');
const path = join(folder, 'log.csv');
writeFileSync(path, csvOf(drive({ rateHz: 250, zones: 60, noiseBar: 0.2 })));

function read(take: (chunk: Uint8Array) => void): void {
  const file = openSync(path, 'r');
  for (;;) {
    const chunk = new Uint8Array(2 ** 20);
    const count = readSync(file, chunk);
    if (count === 0) break;
    take(chunk.subarray(0, count));
  }
  closeSync(file);
}

describe('a log of ten minutes at 250 Hz, relative to reading its bytes', () => {
  bench('bytes alone', () => {
    let newlines = 0;
    read((chunk) => {
      for (const byte of chunk) if (byte === 10) newlines++;
    });
    if (newlines === 0) throw new Error('nothing was read');
  });

  bench('import', () => {
    const reader = new LogReader(
      {
        columns: new Map(),
        units: new Map(),
        brake: null,
        delimiter: null,
        decimal: null,
        rateHz: null,
        steeringPositive: null,
      },
      () => undefined,
    );
    read((chunk) => reader.push(chunk));
    reader.end();
  });
});

import { closeSync, fsyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { allReps } from '../../src/consistency/rep-columns.ts';
import { weeksProgress } from '../../src/consistency/weeks/weeks-progress.ts';
import { decodeRecord } from '../../src/history/codec/decode-record.ts';
import { encodeRecord } from '../../src/history/codec/encode-record.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore } from '../../src/history/store.ts';
import { progressText } from '../../src/screens/progress/progress-text.ts';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import { aPractice, aRep, aScore, EVENING_MS } from '../history/fixtures.ts';
import { JOURNAL, SQL_IMPLEMENTATIONS } from '../history/implementations.ts';
import { fiveSecondRep } from '../history/rep-signals.ts';

/*
 * All of it happens between two reps, where the drill rests for seconds: a rep may cost some tens of milliseconds, the
 * progress of years some hundreds. The floor of a stored rep is its bytes written and synced to the same disk.
 */
const SEED = 20261125;
const record = quantiseRecord(fiveSecondRep(SEED, { bits: 16, counts: 3 }));
const bytes = encodeRecord(record);
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
const opened: { close(): void }[] = [];
afterAll(() => {
  for (const one of opened) one.close();
  rmSync(folder, { recursive: true, force: true });
});

function history(name: string, drivers = SQL_IMPLEMENTATIONS[0]?.drivers ?? []): HistoryStore {
  const store = openHistory(join(folder, name), { drivers });
  opened.push(store);
  return store;
}

describe(`the samples of a rep, ${bytes.length} bytes`, () => {
  bench('quantise', () => void quantiseRecord(record));
  bench('encode', () => void encodeRecord(record));
  bench('decode', () => void decodeRecord(bytes));
});

describe('a rep, durable', () => {
  const fd = openSync(join(folder, 'floor'), 'a');
  opened.push({ close: () => closeSync(fd) });
  bench('floor: the bytes written and synced', () => {
    writeSync(fd, bytes);
    fsyncSync(fd);
  });
  const rep = aRep({ record });
  for (const { name, drivers } of [...SQL_IMPLEMENTATIONS, JOURNAL]) {
    const store = history(`one-${name.replace(/\W/g, '')}`, drivers);
    const practice = store.startPractice(aPractice());
    bench(`addRep, ${name}`, () => void store.addRep(practice, rep));
  }
});

/** So many reps in practices of 25, with small samples: statistics read none. */
function filled(reps: number): HistoryStore {
  const store = history(`many-${reps}`);
  let practice = 0;
  for (let i = 0; i < reps; i++) {
    const at = { utcMs: EVENING_MS + Math.floor(i / 25) * 86_400_000, zone: 'UTC', offsetMin: 0 };
    if (i % 25 === 0) practice = store.startPractice(aPractice({ startedAt: at }));
    store.addRep(practice, aRep({ at, outcome: aScore({ score: i % 100 }) }));
  }
  return store;
}

describe('progress', () => {
  for (const reps of [1000, 10_000]) {
    const store = filled(reps);
    bench(`${reps} reps, read`, () => void store.columns({}));
    bench(`${reps} reps, read, summed up and put in a table`, () => {
      progressText(
        weeksProgress(allReps(store.columns({})), { today: '2026-11-25', weeks: null }),
        26,
      );
    });
    bench(`${reps} reps, read with their whole outcomes`, () => void [...store.reps({})].length);
  }
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { weeksJson } from '../../src/consistency/weeks/weeks-json.ts';
import { weeksProgress } from '../../src/consistency/weeks/weeks-progress.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore } from '../../src/history/store.ts';
import { progressText } from '../../src/screens/progress/progress-text.ts';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import { RECORD } from '../history/fixtures.ts';
import { fiveSecondRep } from '../history/rep-signals.ts';
import { openRaw, yearsOfReps } from './years-of-reps.ts';

/*
 * Ten years of hard use are 100,000 reps; progress over them is meant to answer in half a second. The floor is
 * what the file alone takes: the packed numbers of each practice, read and not looked into. Nothing reads samples, so
 * that a history with whole reps in it takes no longer than one with a few samples each.
 */
const WHOLE = quantiseRecord(fiveSecondRep(20261125, { bits: 12, counts: 1 }));
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-progress-'));
const opened: HistoryStore[] = [];
afterAll(() => {
  for (const store of opened) store.close();
  rmSync(folder, { recursive: true, force: true });
});

function history(reps: number, record = RECORD): [HistoryStore, string] {
  const own = mkdtempSync(join(folder, `${reps}-`));
  yearsOfReps(own, reps, record);
  const store = openHistory(own);
  opened.push(store);
  return [store, own];
}

const today = '2026-11-25';

describe.each([1000, 10_000, 100_000])('progress over %d reps', (count) => {
  const [store, folder] = history(count);
  store.measures({});
  const packs = openRaw(join(folder, 'history.sqlite')).prepare('SELECT bytes FROM measure_pack');
  bench('floor: the packed numbers read from the file', () => void packs.all());
  bench('read', () => void store.measures({}));
  bench('read, worked out and put in words and charts', () => {
    progressText(weeksProgress(store.measures({}), { today, weeks: null }), 26);
  });
  bench('read, worked out and put in JSON', () => {
    JSON.stringify(weeksJson(weeksProgress(store.measures({}), { today, weeks: null })));
  });
});

describe('progress over 10000 reps with five seconds of samples each', () => {
  const [store] = history(10_000, WHOLE);
  bench('read, worked out and put in words and charts', () => {
    progressText(weeksProgress(store.measures({}), { today, weeks: null }), 26);
  });
});

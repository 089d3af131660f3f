import fc from 'fast-check';
import { expect, test } from 'vitest';
import { appendSamples, EMPTY_LOG, type SampleLog, trackOf } from '../../src/drill/sample-log.ts';
import type { Track } from '../../src/trace/track.ts';

const track = (values: readonly number[]): Track => ({
  timeS: Float64Array.from(values),
  value: Float64Array.from(values, (v) => 2 * v),
});
const contents = (log: SampleLog) => [...trackOf(log).timeS];

test('holds what was appended, its times moved to the origin', () => {
  const log = appendSamples(EMPTY_LOG, track([5, 6, 7, 8]), 1, 3, 5);
  expect([...trackOf(log).timeS]).toEqual([1, 2]);
  expect([...trackOf(log).value]).toEqual([12, 14]);
});

test('is the same track for as long as nothing is appended', () => {
  const log = appendSamples(EMPTY_LOG, track([1, 2]), 0, 2, 0);
  expect(trackOf(log)).toBe(trackOf(log));
  const longer = appendSamples(log, track([3]), 0, 1, 0);
  expect(contents(longer)).toEqual([1, 2, 3]);
  expect(contents(log)).toEqual([1, 2]);
});

test('an older log keeps its contents whatever is appended to it or after it', () => {
  const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { maxLength: 2000 });
  fc.assert(
    fc.property(values, values, values, (a, b, c) => {
      const add = (log: SampleLog, v: readonly number[]) =>
        appendSamples(log, track(v), 0, v.length, 0);
      const first = add(EMPTY_LOG, a);
      const second = add(first, b);
      const branch = add(first, c);
      expect(contents(first)).toEqual(a);
      expect(contents(second)).toEqual([...a, ...b]);
      expect(contents(branch)).toEqual([...a, ...c]);
    }),
    { numRuns: 50 },
  );
});

test('a long log is copied only when it outgrows its buffer', () => {
  let log = EMPTY_LOG;
  const buffers = new Set();
  for (let i = 0; i < 10_000; i++) {
    log = appendSamples(log, track([i]), 0, 1, 0);
    buffers.add(log.buffer);
  }
  expect(log.count).toBe(10_000);
  expect(buffers.size).toBeLessThan(8);
});

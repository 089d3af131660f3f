import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createRing, viewRing } from '../../../src/input/reader/ring-memory.ts';
import { RingReader } from '../../../src/input/reader/ring-reader.ts';
import { RingWriter } from '../../../src/input/reader/ring-writer.ts';
import type { ReportBatch } from '../../../src/input/report-batch.ts';

interface Report {
  readonly device: number;
  readonly timeUs: number;
  readonly bytes: readonly number[];
}

function reportsOf(batch: ReportBatch): Report[] {
  return Array.from({ length: batch.count }, (_, i) => ({
    device: batch.device[i]!,
    timeUs: batch.timeUs[i]!,
    bytes: [...batch.bytes.subarray(batch.offset[i], batch.offset[i]! + batch.length[i]!)],
  }));
}

function ends(memory: SharedArrayBuffer): { writer: RingWriter; reader: RingReader } {
  return { writer: new RingWriter(memory), reader: new RingReader(memory) };
}

const push = (writer: RingWriter, { device, timeUs, bytes }: Report): boolean =>
  writer.push(device, timeUs, Uint8Array.from(bytes));

describe('a ring', () => {
  test('holds five seconds of two devices at 1 kHz', () => {
    const memory = createRing();
    const { writer, reader } = ends(memory);
    const report = new Uint8Array(64);
    for (let i = 0; i < 10_000; i++) writer.push(i % 2, i * 500, report);
    expect(reader.drain()).toMatchObject({ count: 10_000, dropped: 0 });
  });

  test('rounds its capacity up to a power of two', () => {
    expect(viewRing(createRing(1)).capacity).toBe(1);
    expect(viewRing(createRing(5)).capacity).toBe(8);
  });

  test.each([0, -1, Number.NaN, 2 ** 25])('cannot hold %s reports', (reports) => {
    expect(() => createRing(reports)).toThrow(RangeError);
  });

  test('drops the newest when full and counts it', () => {
    const { writer, reader } = ends(createRing(2));
    const sent = [10, 20, 30, 40].map((timeUs) => ({ device: 0, timeUs, bytes: [timeUs] }));
    expect(sent.map((report) => push(writer, report))).toEqual([true, true, false, false]);
    const batch = reader.drain();
    expect(reportsOf(batch)).toEqual(sent.slice(0, 2));
    expect(batch.dropped).toBe(2);
    expect(push(writer, sent[3]!)).toBe(true);
    expect(reader.drain()).toMatchObject({ count: 1, dropped: 2 });
  });

  test('keeps 64 bytes of a longer report', () => {
    const { writer, reader } = ends(createRing(2));
    const long = Array.from({ length: 80 }, (_, i) => i);
    push(writer, { device: 3, timeUs: 1, bytes: long });
    push(writer, { device: 3, timeUs: 2, bytes: [] });
    expect(reportsOf(reader.drain()).map(({ bytes }) => bytes)).toEqual([long.slice(0, 64), []]);
  });

  test('moves its watermark in silence, never back', () => {
    const { writer, reader } = ends(createRing(4));
    expect(reader.drain().untilUs).toBe(0);
    writer.advance(1000);
    expect(reader.drain()).toMatchObject({ count: 0, untilUs: 1000 });
    push(writer, { device: 0, timeUs: 1500.25, bytes: [1] });
    expect(reader.drain().untilUs).toBe(1500.25);
    writer.advance(1500.75);
    expect(reader.drain().untilUs).toBe(1500.25);
    writer.advance(2000);
    expect(reader.drain().untilUs).toBe(2000);
  });

  test('forgets what came and what was dropped while nobody was reading', () => {
    const { writer, reader } = ends(createRing(1));
    const report = { device: 0, timeUs: 1, bytes: [1] };
    for (let i = 0; i < 3; i++) push(writer, report);
    expect(reader.drain()).toMatchObject({ count: 1, dropped: 2 });
    for (let i = 0; i < 5; i++) push(writer, report);
    reader.discard();
    expect(reader.drain()).toMatchObject({ count: 0, dropped: 2 });
    for (let i = 0; i < 2; i++) push(writer, report);
    expect(reader.drain()).toMatchObject({ count: 1, dropped: 3 });
  });

  test('is the same for ends opened later', () => {
    const memory = createRing(4);
    const first = ends(memory);
    push(first.writer, { device: 1, timeUs: 1, bytes: [1] });
    push(first.writer, { device: 1, timeUs: 2, bytes: [2] });
    first.reader.drain();
    push(new RingWriter(memory), { device: 1, timeUs: 3, bytes: [3] });
    expect(reportsOf(new RingReader(memory).drain()).map(({ timeUs }) => timeUs)).toEqual([3]);
  });
});

type Step =
  | { readonly kind: 'push'; readonly device: number; readonly gapUs: number; bytes: Uint8Array }
  | { readonly kind: 'drain' }
  | { readonly kind: 'advance'; readonly gapUs: number };

const gapUs = fc.nat({ max: 5000 });
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('push' as const),
      device: fc.nat({ max: 255 }),
      gapUs,
      bytes: fc.uint8Array({ maxLength: 64 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('drain' as const) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('advance' as const), gapUs }) },
);

test('a ring behaves like a bounded queue, wherever its counters stand', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(1, 2, 4, 8),
      fc.constantFrom(0, 3, 2 ** 31 - 2, -1, -3),
      fc.array(step, { maxLength: 60 }),
      (capacity, start, steps) => {
        const memory = createRing(capacity);
        // The first two counters are reports written and taken; they wrap as 32-bit integers.
        viewRing(memory).counters.fill(start, 0, 2);
        const { writer, reader } = ends(memory);
        let queue: Report[] = [];
        let [nowUs, untilUs, dropped] = [0, 0, 0];
        for (const next of steps) {
          if (next.kind === 'push') {
            nowUs += next.gapUs;
            const report = { device: next.device, timeUs: nowUs, bytes: [...next.bytes] };
            expect(push(writer, report)).toBe(queue.length < capacity);
            if (queue.length < capacity) queue.push(report);
            else dropped += 1;
          } else if (next.kind === 'advance') {
            nowUs += next.gapUs;
            untilUs = nowUs;
            writer.advance(nowUs);
          } else {
            const batch = reader.drain();
            untilUs = Math.max(untilUs, ...queue.map(({ timeUs }) => timeUs));
            expect(reportsOf(batch)).toEqual(queue);
            expect(batch).toMatchObject({ dropped, untilUs });
            queue = [];
          }
        }
      },
    ),
  );
});

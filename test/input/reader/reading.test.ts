import { EventEmitter } from 'node:events';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { monotonicUs } from '../../../src/input/reader/monotonic-us.ts';
import { Reading } from '../../../src/input/reader/reading.ts';
import { createRing, viewRing } from '../../../src/input/reader/ring-memory.ts';

const DEVICE = {
  identity: {
    vendorId: 0x1209,
    productId: 1,
    serial: null,
    interfaceNumber: 0,
    usagePage: 1,
    usage: 4,
  },
  path: '/dev/hidraw0',
};
let handle: EventEmitter & { close(): Promise<void> };
let reading: Reading;
const ring = createRing();
const watermarkUs = (): number => Number(viewRing(ring).watermarkUs[0]);
const behindMs = (): number => (monotonicUs() - watermarkUs()) / 1000;

beforeEach(async () => {
  vi.useFakeTimers();
  // The system's clock is long past its start.
  vi.advanceTimersByTime(60_000);
  handle = Object.assign(new EventEmitter(), { close: async () => {} });
  const hid = { records: async () => [], open: async () => handle };
  reading = await Reading.start(hid, { devices: [DEVICE], hidModule: null }, ring, () => {});
});
afterEach(async () => {
  await reading.close();
  expect(vi.getTimerCount()).toBe(0);
  vi.useRealTimers();
});

/** How often the watermark has moved meanwhile. */
function movesWhile(ms: number, eachMs: (ms: number) => void): number {
  let [moves, last] = [0, watermarkUs()];
  for (let i = 0; i < ms; i++) {
    vi.advanceTimersByTime(1);
    eachMs(i);
    if (watermarkUs() !== last) moves++;
    last = watermarkUs();
  }
  return moves;
}

test('in silence the clock is never more than a few milliseconds behind', () => {
  const behind: number[] = [];
  movesWhile(200, () => behind.push(behindMs()));
  expect(Math.max(...behind)).toBeLessThanOrEqual(5);
});

test('after a single report it is a frame behind at most', () => {
  const behind: number[] = [];
  movesWhile(500, (ms) => {
    if (ms % 25 === 0) handle.emit('data', Uint8Array.of(1));
    behind.push(behindMs());
  });
  expect(Math.max(...behind)).toBeLessThanOrEqual(17);
});

test('a stream of reports moves it itself: it is looked after once a frame, and as before when the stream ends', () => {
  const stream = (): void => void handle.emit('data', Uint8Array.of(1));
  movesWhile(50, stream);
  expect(movesWhile(160, stream)).toBeLessThanOrEqual(11);
  // The last look is 16 ms away at most.
  movesWhile(17, () => {});
  const behind: number[] = [];
  movesWhile(100, () => behind.push(behindMs()));
  expect(Math.max(...behind)).toBeLessThanOrEqual(5);
});

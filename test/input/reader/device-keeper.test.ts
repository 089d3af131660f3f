import { EventEmitter } from 'node:events';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { DeviceKeeper } from '../../../src/input/reader/device-keeper.ts';
import { createRing } from '../../../src/input/reader/ring-memory.ts';
import { RingReader } from '../../../src/input/reader/ring-reader.ts';
import { RingWriter } from '../../../src/input/reader/ring-writer.ts';
import type { DeviceEvent } from '../../../src/input/report-source.ts';

const IDENTITY = {
  vendorId: 1,
  productId: 2,
  serial: null,
  interfaceNumber: 0,
  usagePage: 1,
  usage: 4,
};

class Handle extends EventEmitter {
  closes = 0;
  close(): Promise<void> {
    this.closes += 1;
    return this.closes === 1 ? Promise.resolve() : Promise.reject(new Error('already closed'));
  }
}

describe('a device that is kept open', () => {
  let nowUs = 0;
  beforeEach(() => {
    nowUs = 1e9;
    const clock = (): [number, number] => [Math.floor(nowUs / 1e6), (nowUs % 1e6) * 1e3];
    vi.spyOn(process, 'hrtime').mockImplementation(clock as typeof process.hrtime);
  });
  afterEach(() => vi.restoreAllMocks());

  function keep(open: () => Promise<Handle>) {
    const memory = createRing(8);
    const events: DeviceEvent[] = [];
    const keeper = new DeviceKeeper(3, IDENTITY, {
      hid: { records: async () => [], open },
      writer: new RingWriter(memory),
      onLost: (event) => events.push(event),
    });
    return { keeper, events, ring: new RingReader(memory) };
  }

  test('does not pass on what had queued up before anyone listened', async () => {
    const handle = new Handle();
    const { keeper, ring } = keep(async () => handle);
    await keeper.open('a');
    handle.emit('data', Uint8Array.of(1));
    nowUs += 4999;
    handle.emit('data', Uint8Array.of(2));
    nowUs += 1;
    handle.emit('data', Uint8Array.of(3));
    const batch = ring.drain();
    expect([batch.count, batch.bytes[0], batch.device[0], batch.timeUs[0]]).toEqual([
      1,
      3,
      3,
      1e9 + 5000,
    ]);
  });

  test('closes a device that opened too late', async () => {
    const handle = new Handle();
    let opened: (handle: Handle) => void = () => undefined;
    const { keeper } = keep(() => new Promise((resolve) => (opened = resolve)));
    const opening = keeper.open('a');
    await keeper.close();
    opened(handle);
    await opening;
    expect([handle.closes, keeper.path]).toEqual([1, null]);
  });

  test('hears nothing more of a handle it has lost', async () => {
    const [first, second] = [new Handle(), new Handle()];
    const { keeper, events, ring } = keep(async () => (first.closes === 0 ? first : second));
    await keeper.open('a');
    first.emit('error', 'gone');
    expect([keeper.path, first.closes]).toEqual([null, 1]);
    await keeper.open('b');
    first.emit('error', 'gone again');
    nowUs += 10_000;
    second.emit('data', Uint8Array.of(7));
    expect([keeper.path, second.closes, ring.drain().count]).toEqual(['b', 0, 1]);
    expect(events).toEqual([{ kind: 'lost', device: 3, atUs: 1e9, reason: 'gone' }]);
  });

  test('is closed only when all handles are', async () => {
    const slow = new Handle();
    let closed: () => void = () => undefined;
    slow.close = () => new Promise((resolve) => (closed = resolve));
    const handles = [slow, new Handle()];
    const { keeper } = keep(async () => handles.shift()!);
    await keeper.open('a');
    slow.emit('error', 'gone');
    await keeper.open('b');
    let done = 0;
    const closing = [keeper.close(), keeper.close()].map((close) => close.then(() => done++));
    await new Promise((resolve) => setImmediate(resolve));
    expect(done).toBe(0);
    closed();
    await Promise.all(closing);
    expect(done).toBe(2);
  });

  test('closes each handle once', async () => {
    const handle = new Handle();
    const { keeper } = keep(async () => handle);
    await keeper.open('a');
    handle.emit('error', new Error('gone'));
    await keeper.close();
    await keeper.close();
    expect(handle.closes).toBe(1);
  });
});

import { setTimeout as delay } from 'node:timers/promises';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { startDirectReader } from '../../../src/input/reader/direct-reader.ts';
import { monotonicUs } from '../../../src/input/reader/monotonic-us.ts';
import { OpenFailure } from '../../../src/input/reader/read-request.ts';
import type { ReportReader } from '../../../src/input/reader/report-reader.ts';
import { RingReader } from '../../../src/input/reader/ring-reader.ts';
import { startWorkerReader } from '../../../src/input/reader/worker-reader.ts';
import type { DeviceEvent } from '../../../src/input/report-source.ts';
import type { DeviceIdentity } from '../../../src/input/rig-device.ts';
import { Problem } from '../../../src/problem.ts';
import { FakeBus, type FakeDevice } from './fake-bus.ts';

const PEDALS: FakeDevice = {
  vendorId: 0x1209,
  productId: 0x0001,
  path: '/dev/hidraw0',
  serialNumber: 'P-17',
  interface: 0,
  usagePage: 1,
  usage: 4,
};
const WHEEL: FakeDevice = { ...PEDALS, productId: 0x0002, path: '/dev/hidraw1' };
const identity = ({ productId }: FakeDevice): DeviceIdentity => ({
  vendorId: 0x1209,
  productId,
  serial: 'P-17',
  interfaceNumber: 0,
  usagePage: 1,
  usage: 4,
});

const threads = { worker: startWorkerReader, 'calling thread': startDirectReader };

describe.each(Object.entries(threads))('reading on the %s', (thread, startReader) => {
  const cleanUps: (() => unknown)[] = [];
  afterEach(async () => {
    for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
  });

  interface Bench {
    readonly bus: FakeBus;
    readonly reader: ReportReader;
    readonly ring: RingReader;
    readonly events: DeviceEvent[];
  }

  async function bench(devices: readonly FakeDevice[], options = {}): Promise<Bench> {
    const bus = new FakeBus(devices, options);
    cleanUps.push(() => bus.close());
    const events: DeviceEvent[] = [];
    const wanted = devices.map((device) => ({ identity: identity(device), path: device.path }));
    const request = { devices: wanted, hidModule: bus.hidModule, seekMs: 50 };
    const reader = await startReader(request, (event) => events.push(event));
    cleanUps.push(() => reader.close());
    // What a device says at once is old and not read.
    await delay(10);
    return { bus, reader, ring: new RingReader(reader.ring), events };
  }

  test('says which thread that is', async () => {
    expect((await bench([PEDALS])).reader.threaded).toBe(thread === 'worker');
  });

  test('stamps reports with the process-wide clock and the number of their device', async () => {
    const { bus, ring } = await bench([PEDALS, WHEEL]);
    const before = monotonicUs();
    await bus.report(PEDALS.path, [1, 2, 3], [4]);
    await bus.report(WHEEL.path, [5, 6]);
    const after = monotonicUs();
    const batch = ring.drain();
    expect([...batch.device.subarray(0, batch.count)]).toEqual([0, 0, 1]);
    expect([...batch.length.subarray(0, batch.count)]).toEqual([3, 1, 2]);
    expect([...batch.bytes.subarray(64, 65)]).toEqual([4]);
    const times = [before, ...batch.timeUs.subarray(0, batch.count), after];
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  test('moves the watermark in silence', async () => {
    const { ring } = await bench([PEDALS]);
    const first = ring.drain().untilUs;
    expect(first).toBeGreaterThan(0);
    await vi.waitFor(() => expect(ring.drain().untilUs).toBeGreaterThan(first));
    expect(ring.drain().untilUs).toBeLessThanOrEqual(monotonicUs());
  });

  test('takes any read error as unplugged, says so once and closes once', async () => {
    const { bus, ring, events } = await bench([PEDALS, WHEEL]);
    await bus.unplug(WHEEL.path, 'could not read: \x1b[31mgone{bold}');
    await vi.waitFor(() => expect(events.length).toBe(1));
    expect(events[0]).toMatchObject({ kind: 'lost', device: 1 });
    expect((events[0] as { reason: string }).reason).toBe('could not read: [31mgone(bold)');
    expect(events[0]!.atUs).toBeLessThanOrEqual(monotonicUs());
    await vi.waitFor(() => expect(bus.closes).toBe(1));
    await bus.report(PEDALS.path, [7]);
    expect(ring.drain().count).toBe(1);
  });

  test('takes an Error like words', async () => {
    const { bus, events } = await bench([PEDALS]);
    await bus.fail(PEDALS.path, 'broken pipe', true);
    await vi.waitFor(() => expect(events[0]).toMatchObject({ reason: 'broken pipe' }));
  });

  test('finds a device again at another path and keeps its number', {
    timeout: 15_000,
  }, async () => {
    const { bus, ring, events } = await bench([PEDALS, WHEEL]);
    await bus.unplug(WHEEL.path);
    await bus.plug({ ...WHEEL, path: '/dev/hidraw5', serialNumber: 'another' });
    await bus.plug({ ...WHEEL, path: '/dev/hidraw6', refusal: 'not yet' });
    await vi.waitFor(() => expect(events.length).toBe(1));
    await bus.plug({ ...WHEEL, path: '/dev/hidraw7' });
    await bus.unplug('/dev/hidraw6');
    await vi.waitFor(() => expect(events.length).toBe(2));
    expect(events.map(({ kind, device }) => [kind, device])).toEqual([
      ['lost', 1],
      ['back', 1],
    ]);
    await delay(10);
    ring.drain();
    await bus.report('/dev/hidraw7', [9]);
    const batch = ring.drain();
    expect([batch.count, batch.device[0]]).toEqual([1, 1]);
  });

  test('keeps trying while a device is listed but does not open', async () => {
    const { bus, events } = await bench([PEDALS]);
    await bus.unplug(PEDALS.path);
    await bus.plug({ ...PEDALS, refusal: 'permission denied' });
    await delay(300);
    expect(events.map(({ kind }) => kind)).toEqual(['lost']);
    await bus.plug(PEDALS);
    await vi.waitFor(() => expect(events.map(({ kind }) => kind)).toEqual(['lost', 'back']));
  });

  test('does not take one device for two of the same model', async () => {
    const twin = { ...PEDALS, path: '/dev/hidraw4' };
    const { bus, events } = await bench([PEDALS, twin]);
    await bus.unplug(twin.path);
    await delay(300);
    expect(events.map(({ kind }) => kind)).toEqual(['lost']);
    expect(await bus.handles()).toBe(1);
  });

  test('closes all devices, and twice is the same as once', async () => {
    const { bus, reader } = await bench([PEDALS, WHEEL]);
    await Promise.all([reader.close(), reader.close()]);
    await reader.close();
    await vi.waitFor(() => expect(bus.closes).toBe(2));
  });

  test('names the device that does not open and leaves none open', async () => {
    const devices = [PEDALS, { ...WHEEL, refusal: 'cannot open device' }];
    const failure = await bench(devices).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(OpenFailure);
    expect(failure).toMatchObject({ device: 1, message: 'cannot open device' });
  });

  test('passes on why the library does not load', async () => {
    const problemModule = new URL('../../../dist/problem.js', import.meta.url).href;
    const failure = await bench([PEDALS], { loadFailure: 'no library', problemModule }).catch(
      (error: unknown) => error,
    );
    expect(failure).toMatchObject({ name: 'Problem', message: 'no library', next: 'Install it.' });
  });
});

test('a worker that dies loses all devices', async () => {
  const bus = new FakeBus([PEDALS, WHEEL]);
  const events: DeviceEvent[] = [];
  const devices = [PEDALS, WHEEL].map((d) => ({ identity: identity(d), path: d.path }));
  const request = { devices, hidModule: bus.hidModule };
  const reader = await startWorkerReader(request, (event) => events.push(event));
  await bus.crash();
  await vi.waitFor(() => expect(events.map(({ device }) => device)).toEqual([0, 1]));
  expect(events[0]).toMatchObject({ kind: 'lost', reason: 'reading stopped: a defect' });
  await reader.close();
  bus.close();
});

test('a worker that does not start is an error that is no Problem', async () => {
  const missing = new URL('./no-such-worker.mjs', import.meta.url);
  const request = { devices: [], hidModule: null };
  const failure = await startWorkerReader(request, () => undefined, missing).catch(
    (error: unknown) => error,
  );
  expect(failure).toBeInstanceOf(Error);
  expect(failure).not.toBeInstanceOf(Problem);
  expect(failure).not.toBeInstanceOf(OpenFailure);
});

import { setTimeout as delay } from 'node:timers/promises';
import { firstValueFrom, lastValueFrom, reduce, type Subscription, take, toArray } from 'rxjs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { FoundDevice } from '../../src/input/discovery/found-device.ts';
import { type HidSource, openHidSource } from '../../src/input/hid-source.ts';
import type { ReportBatch } from '../../src/input/report-batch.ts';
import { FakeBus, type FakeDevice } from './reader/fake-bus.ts';

const RECORD: FakeDevice = {
  vendorId: 0x1209,
  productId: 1,
  path: '/dev/hidraw0',
  interface: 0,
  usagePage: 1,
  usage: 4,
};
const PEDALS: FoundDevice = {
  identity: {
    vendorId: 0x1209,
    productId: 1,
    serial: null,
    interfaceNumber: 0,
    usagePage: 1,
    usage: 4,
  },
  path: RECORD.path,
  name: 'Three pedals',
  maker: '',
  descriptor: null,
  kind: 'rig',
  problem: null,
};

describe('the source of real devices', () => {
  let bus: FakeBus | null = null;
  let source: HidSource | null = null;
  afterEach(async () => {
    await source?.close();
    bus?.close();
  });

  async function open(records: FakeDevice[] = [RECORD], worker?: URL | false): Promise<HidSource> {
    bus = new FakeBus(records);
    source = await openHidSource([PEDALS], {
      hidModule: bus.hidModule,
      ...(worker === undefined ? {} : { worker }),
    });
    await delay(10);
    return source;
  }

  function collect(from: HidSource): { sizes: number[]; untilUs: number[]; stop: Subscription } {
    const [sizes, untilUs]: [number[], number[]] = [[], []];
    const stop = from.batches$.subscribe((batch: ReportBatch) => {
      sizes.push(batch.count);
      untilUs.push(batch.untilUs);
    });
    return { sizes, untilUs, stop };
  }

  test('describes itself', async () => {
    expect(await open()).toMatchObject({
      label: '1 device',
      devices: [PEDALS],
      simulated: false,
      threaded: true,
    });
    await source!.close();
    expect((await open([RECORD], false)).threaded).toBe(false);
  });

  test('reads on the calling thread where the worker does not start', async () => {
    const live = await open([RECORD], new URL('./no-such-worker.mjs', import.meta.url));
    expect(live.threaded).toBe(false);
    const { sizes } = collect(live);
    await bus!.report(RECORD.path, [1]);
    await vi.waitFor(() => expect(sizes).toContain(1));
  });

  test('emits batches, empty ones included, while the clock goes on', async () => {
    const { sizes, untilUs } = collect(await open());
    await bus!.report(RECORD.path, [1], [2], [3]);
    await vi.waitFor(() => expect(sizes.length).toBeGreaterThan(5));
    expect(sizes.reduce((a, b) => a + b)).toBe(3);
    expect(sizes).toContain(0);
    expect(untilUs).toEqual([...untilUs].sort((a, b) => a - b));
    expect(untilUs.at(-1)).toBeGreaterThan(untilUs[0]!);
  });

  test('starts when subscribed: what came before is not delivered and not dropped', async () => {
    const live = await open();
    await bus!.report(RECORD.path, ...Array.from({ length: 20_000 }, () => [1]));
    const first = await firstValueFrom(live.batches$);
    expect(first).toMatchObject({ count: 0, dropped: 0 });
  });

  test('gives all subscribers the same batches', async () => {
    const live = await open();
    const [a, b] = [collect(live), collect(live)];
    await bus!.report(RECORD.path, [1], [2]);
    await vi.waitFor(() => expect(a.sizes).toContain(2));
    expect(b.sizes).toContain(2);
  });

  test('tells of a lost device, also to who asks later', async () => {
    const live = await open();
    await bus!.unplug(RECORD.path, 'gone');
    await delay(50);
    expect(await firstValueFrom(live.events$)).toMatchObject({
      kind: 'lost',
      device: 0,
      reason: 'gone',
    });
  });

  test('completes when closed, once for all', async () => {
    const live = await open();
    const counts = lastValueFrom(live.batches$.pipe(reduce((n) => n + 1, 0)));
    const events = lastValueFrom(live.events$.pipe(toArray()));
    await delay(30);
    await Promise.all([live.close(), live.close()]);
    expect(await counts).toBeGreaterThan(0);
    expect(await events).toEqual([]);
    expect(await lastValueFrom(live.batches$.pipe(take(1), toArray()))).toEqual([]);
    await vi.waitFor(() => expect(bus!.closes).toBe(1));
  });

  test('without a device says what to do', async () => {
    await expect(openHidSource([])).rejects.toMatchObject({
      name: 'Problem',
      next: expect.stringContaining('--source virtual'),
    });
  });

  test('that does not open says which device and why', async () => {
    const refused = open([{ ...RECORD, refusal: 'cannot open device' }]);
    await expect(refused).rejects.toMatchObject({
      name: 'Problem',
      where: '/dev/hidraw0',
      message: 'Three pedals does not open: cannot open device',
    });
  });
});

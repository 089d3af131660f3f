import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as delay } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { discoverDevices, likelyRigDevices } from '../../src/input/discovery/discover-devices.ts';
import type { FoundDevice } from '../../src/input/discovery/found-device.ts';
import { compileField } from '../../src/input/hid/compile-field.ts';
import { parseDescriptor } from '../../src/input/hid/parse-descriptor.ts';
import {
  type HidSource,
  type HidSourceOptions,
  openHidSource,
} from '../../src/input/hid-source.ts';
import { monotonicUs } from '../../src/input/reader/monotonic-us.ts';
import type { DeviceEvent } from '../../src/input/report-source.ts';
import { DeviceProcess } from './device-process.ts';
import { EventNode } from './event-node.ts';
import { BARE_LOOP, LoopProcess } from './loop-process.ts';
import { type Arrival, latenessUs, lost, percentile, Recording } from './recording.ts';
import { type FieldPlan, PEDALS, type VirtualDevice, WHEEL } from './virtual-rig.ts';

const RIG = [PEDALS, WHEEL];
const uhid = new DeviceProcess();

/** Patience that a software-emulated guest on a busy machine needs; nothing is measured with it. */
const PATIENCE = { timeout: 30_000, interval: 100 };

function eventually<T>(check: () => T | Promise<T>): Promise<T> {
  return vi.waitFor(check, PATIENCE);
}

/** Both virtual devices as discovery finds them, in the order of `RIG`. */
async function findRig(): Promise<FoundDevice[]> {
  return eventually(async () => {
    const found = await discoverDevices();
    return RIG.map((device) => {
      const match = found.find(({ identity }) => identity.productId === device.product);
      if (match === undefined) throw new Error(`${device.id} not found`);
      return match;
    });
  });
}

interface Live {
  readonly source: HidSource;
  readonly recording: Recording;
}

async function withSource(run: (live: Live) => Promise<void>, options: HidSourceOptions = {}) {
  const source = await openHidSource(await findRig(), options);
  const recording = new Recording(source, RIG);
  try {
    await wake(recording);
    await run({ source, recording });
  } finally {
    recording.stop();
    await source.close();
  }
}

/**
 * What a device says in the first moments after opening is old and not read, and an emulated guest is slow to compile
 * what reads it: counting starts when reports come through.
 */
async function wake(recording: Recording): Promise<void> {
  await eventually(async () => {
    await (await stream(400)).finished;
    for (const arrivals of recording.arrivals) expect(arrivals.length).toBeGreaterThan(0);
  });
  await delay(200);
  recording.clear();
}

/** Streams pedals at 1 kHz and, half as many, the wheel at 500 Hz. */
async function stream(count: number): Promise<{ finished: Promise<unknown> }> {
  const pedals = await uhid.stream(PEDALS, { rateHz: 1000, first: 0, count });
  const wheel = await uhid.stream(WHEEL, { rateHz: 500, first: 0, count: count / 2 });
  return { finished: Promise.all([pedals.finished, wheel.finished]) };
}

/** Waits until the last report of a stream has come through. */
async function arrived(arrivals: readonly Arrival[], last: number): Promise<void> {
  await eventually(() => expect(arrivals.at(-1)?.counter).toBe(last));
}

function busyUntil(us: number): void {
  while (monotonicUs() < us);
}

beforeAll(async () => {
  await uhid.create(PEDALS);
  await uhid.create(WHEEL);
});

afterAll(() => uhid.close());

describe('discovery', () => {
  test('finds pedals and wheel as two devices, with the descriptors they were made with', async () => {
    const found = likelyRigDevices(await findRig());
    expect(found.map(({ name, kind, problem }) => ({ name, kind, problem }))).toEqual([
      { name: 'Virtual pedals', kind: 'rig', problem: null },
      { name: 'Virtual wheel', kind: 'rig', problem: null },
    ]);
    expect(found.map(({ descriptor }) => Buffer.from(descriptor!).toString('hex'))).toEqual(
      RIG.map(({ descriptor }) => descriptor),
    );
    expect(found.map(({ identity }) => identity)).toEqual([
      {
        vendorId: 0x1209,
        productId: 0x7e01,
        serial: 'VP-0042',
        interfaceNumber: -1,
        usagePage: 2,
        usage: 2,
      },
      {
        vendorId: 0x1209,
        productId: 0x7e02,
        serial: 'VW-0007',
        interfaceNumber: -1,
        usagePage: 1,
        usage: 8,
      },
    ]);
  });

  test('keeps what a device calls itself away from the terminal', async () => {
    const name = 'P\x1b[31m{bold}e\x07d\u202eal\u009b2Js';
    const hostile = { ...WHEEL, id: 'hostile', product: 0x7e03, name: Buffer.from(name) };
    await uhid.create(hostile);
    const found = await eventually(async () => {
      const match = (await discoverDevices()).find(({ identity }) => identity.productId === 0x7e03);
      expect(match).toBeDefined();
      return match!;
    });
    await uhid.destroy(hostile);
    console.log(`hostile name became ${JSON.stringify(found.name)}`);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: none of them may be left
    expect(found.name).not.toMatch(/[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069{}]/);
    expect(found.name).toMatch(/P.*d.*al/);
  });
});

describe('reading', () => {
  test('brings every report, as a bare loop does', async () => {
    await withSource(async ({ recording }) => {
      await (await stream(2000)).finished;
      const [pedals, wheel] = recording.arrivals as [Arrival[], Arrival[]];
      await arrived(pedals, 1999);
      await arrived(wheel, 999);
      expect([pedals.length, wheel.length]).toEqual([2000, 1000]);
      expect([lost(pedals, 4), lost(wheel, 2), recording.dropped]).toEqual([0, 0, 0]);
      const ours = latenessUs(pedals);
      const bare = await bareRun();
      console.log(`lost of 3000: source 0, bare loop ${bare.lost}`);
      console.log(
        `lateness, median and 99th percentile in us: ${two(ours)}; bare ${two(bare.latenessUs)}`,
      );
      const ratio = percentile(ours, 0.5) / percentile(bare.latenessUs, 0.5);
      console.log(`lateness relative to the bare loop: ${ratio.toFixed(2)}`);
    });
  });

  async function bareRun(): Promise<{ lost: number; latenessUs: readonly number[] }> {
    const found = await findRig();
    const loop = await LoopProcess.start(
      BARE_LOOP,
      RIG.map(({ layout }, i) => ({ ...layout, path: found[i]!.path })),
    );
    await delay(50);
    await (await stream(2000)).finished;
    await delay(1000);
    const { results } = await loop.finish();
    const received = results.reduce((sum, result) => sum + result.received, 0);
    return { lost: 3000 - received, latenessUs: results[0]!.latenessUs };
  }

  function two(values: readonly number[]): string {
    return `${percentile(values, 0.5).toFixed(0)} ${percentile(values, 0.99).toFixed(0)}`;
  }

  /** Blocks this thread for 200 ms several times; of the reports sent early in a block, how many were stamped in it. */
  async function stampedWhileBlocked({ recording }: Live): Promise<number> {
    const { finished } = await stream(2000);
    const blocks: { fromUs: number; toUs: number }[] = [];
    for (let i = 0; i < 4; i++) {
      await delay(150);
      const fromUs = monotonicUs();
      busyUntil(fromUs + 200_000);
      blocks.push({ fromUs, toUs: monotonicUs() });
    }
    await finished;
    await arrived(recording.arrivals[0]!, 1999);
    const early = blocks.flatMap(({ fromUs, toUs }) =>
      recording.arrivals[0]!.filter(
        ({ sentUs }) => sentUs > fromUs && sentUs < (fromUs + toUs) / 2,
      ).map(({ stampedUs }) => stampedUs < toUs),
    );
    expect(early.length).toBeGreaterThan(0);
    return early.filter(Boolean).length / early.length;
  }

  test('goes on while the main thread is blocked: nothing lost, no stamp delayed', async () => {
    await withSource(async (live) => {
      expect(live.source.threaded).toBe(true);
      const share = await stampedWhileBlocked(live);
      const [pedals, wheel] = live.recording.arrivals as [Arrival[], Arrival[]];
      await arrived(wheel, 999);
      expect([pedals.length, wheel.length, live.recording.dropped]).toEqual([2000, 1000, 0]);
      console.log(
        `stamped during a block: ${(100 * share).toFixed(1)} % of those sent early in it`,
      );
      // Without a worker it is none at all, see below; a slow guest keeps it from being all.
      expect(share).toBeGreaterThan(0.5);
    });
  });

  test('without a worker loses nothing either, but stamps only after the block', async () => {
    await withSource(
      async (live) => {
        expect(live.source.threaded).toBe(false);
        expect(await stampedWhileBlocked(live)).toBe(0);
        expect(live.recording.arrivals[0]!.length).toBe(2000);
      },
      { worker: false },
    );
  });

  test('survives unplugging in mid-stream and finds the device again at a new node', async () => {
    await withSource(async ({ source, recording }) => {
      const events: DeviceEvent[] = [];
      source.events$.subscribe((event) => events.push(event));
      const [pedals, wheel] = recording.arrivals as [Arrival[], Arrival[]];
      const { finished } = await uhid.stream(WHEEL, { rateHz: 500, first: 0, count: 1500 });
      await uhid.stream(PEDALS, { rateHz: 1000, first: 0, count: 4000 });
      await eventually(() => expect(pedals.length).toBeGreaterThan(200));
      await uhid.destroy(PEDALS);
      await eventually(() => expect(events).toMatchObject([{ kind: 'lost', device: 0 }]));
      expect(lost(pedals, 4)).toBe(0);
      const before = pedals.length;

      // Takes the node that became free, so that the pedals come back at another.
      const decoy: VirtualDevice = { ...WHEEL, id: 'decoy', product: 0x7e04 };
      await uhid.create(decoy);
      await delay(100);
      await uhid.create(PEDALS);
      await eventually(() => expect(events[1]).toMatchObject({ kind: 'back', device: 0 }));
      const again = await findRig();
      expect(again[0]!.path).not.toBe(source.devices[0]!.path);
      expect(again[0]!.identity).toEqual(source.devices[0]!.identity);

      await delay(50);
      await uhid.stream(PEDALS, { rateHz: 1000, first: 100_000, count: 500 });
      await arrived(pedals, 100_499);
      expect(pedals.length - before).toBe(500);
      await finished;
      await arrived(wheel, 1499);
      expect([wheel.length, lost(wheel, 2), recording.dropped]).toEqual([1500, 0, 0]);
      expect(events.length).toBe(2);
      await uhid.destroy(decoy);
    });
  });
});

describe('a process that ends while it reads', () => {
  const program = new URL('../input/reader/end-while-reading.mjs', import.meta.url).pathname;

  test.each([
    ['process.exit', 3],
    ['exception', 1],
    ['close', 0],
  ])('by %s does end', async (way, code) => {
    const devices = (await findRig()).map(({ identity, path }) => ({ identity, path }));
    const args = [program, way, JSON.stringify(devices)];
    const child = spawn(process.execPath, args, { stdio: 'ignore' });
    expect(await once(child, 'exit')).toEqual([code, null]);
  });
});

describe('decoding', () => {
  const REPORTS = 200;

  function decoded(found: FoundDevice, arrivals: readonly Arrival[], plan: FieldPlan): number[] {
    const { fields } = parseDescriptor(found.descriptor!);
    const { layout } = RIG.find(({ product }) => product === found.identity.productId)!;
    // A repeated usage is told apart by where it sits.
    const same = layout.fields.filter(({ usageId }) => usageId === plan.usageId);
    const field = fields.filter(
      ({ usagePage, usageId }) => usagePage === plan.usagePage && usageId === plan.usageId,
    )[same.indexOf(plan)]!;
    const read = compileField(field);
    return arrivals.map(({ bytes }) => read(bytes, 0, bytes.length)!);
  }

  test('gives the values that were packed, and those that the kernel decodes itself', async () => {
    const found = await findRig();
    await withSource(async ({ recording }) => {
      const nodes = await Promise.all(found.map(({ path }) => EventNode.beside(path)));
      await delay(500);
      for (const device of RIG) {
        // Slow and without bursts, for the kernel's queue of events is shorter still.
        const plan = { rateHz: 100, first: 0, count: REPORTS, burst: 1 };
        await (await uhid.stream(device, plan)).finished;
      }
      for (const [i, device] of RIG.entries()) {
        const arrivals = recording.arrivals[i]!;
        await arrived(arrivals, REPORTS - 1);
        for (const plan of device.layout.fields) {
          const values = decoded(found[i]!, arrivals, plan);
          expect(values).toEqual(
            Array.from({ length: REPORTS }, (_, n) => plan.start + ((n * plan.step) % plan.span)),
          );
          if (plan.absCode === null) continue;
          const { absCode } = plan;
          await eventually(() => expect(nodes[i]!.values(absCode)).toEqual(values));
        }
      }
      await Promise.all(nodes.map((node) => node.close()));
    });
  });
});

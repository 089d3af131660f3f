import { setTimeout as delay } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { discoverDevices } from '../../src/input/discovery/discover-devices.ts';
import { DeviceProcess } from '../live/device-process.ts';
import {
  BARE_LOOP,
  type Frames,
  type LoopDevice,
  LoopProcess,
  type LoopResult,
} from '../live/loop-process.ts';
import { percentile } from '../live/recording.ts';
import { PEDALS, WHEEL } from '../live/virtual-rig.ts';

const SOURCE_LOOP = new URL('./source-loop.mjs', import.meta.url);
const ROUNDS = 3;
const PEDAL_REPORTS = 1500;
const SENT = 1.5 * PEDAL_REPORTS;
const uhid = new DeviceProcess();

beforeAll(async () => {
  await uhid.create(PEDALS);
  await uhid.create(WHEEL);
});

afterAll(() => uhid.close());

async function rig(): Promise<LoopDevice[]> {
  const found = await discoverDevices();
  return [PEDALS, WHEEL].map(({ product, layout }) => {
    const { path } = found.find(({ identity }) => identity.productId === product)!;
    return { ...layout, path };
  });
}

async function measure(program: URL, frames: Frames | null): Promise<LoopResult> {
  const loop = await LoopProcess.start(program, await rig(), frames);
  await delay(200);
  const pedals = await uhid.stream(PEDALS, { rateHz: 1000, first: 0, count: PEDAL_REPORTS });
  const wheel = await uhid.stream(WHEEL, { rateHz: 500, first: 0, count: PEDAL_REPORTS / 2 });
  await Promise.all([pedals.finished, wheel.finished]);
  await delay(500);
  return loop.finish();
}

interface Summary {
  readonly lost: number;
  readonly cpuUs: number;
  readonly medianUs: number;
  readonly p99Us: number;
}

function summary(runs: readonly LoopResult[]): Summary {
  const results = runs.flatMap((run) => run.results);
  const lateness = results.flatMap((result) => result.latenessUs);
  const cpu = runs.map(({ cpuUs }) => cpuUs);
  return {
    lost: runs.length * SENT - results.reduce((sum, { received }) => sum + received, 0),
    cpuUs: percentile(cpu, 0.5),
    medianUs: percentile(lateness, 0.5),
    p99Us: percentile(lateness, 0.99),
  };
}

const loads: readonly [string, Frames | null][] = [
  ['idle main thread', null],
  ['frames of 8 ms, 30 a second', { everyMs: 33, blockMs: 8 }],
];

test.each(loads)('source relative to a bare loop, %s', async (name, frames) => {
  const [ours, bare]: [LoopResult[], LoopResult[]] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    // In turns, so that what else the machine does meets both.
    ours.push(await measure(SOURCE_LOOP, frames));
    bare.push(await measure(BARE_LOOP, frames));
  }
  const [a, b] = [summary(ours), summary(bare)];
  const ratio = (key: keyof Summary): string => (a[key] / b[key]).toFixed(2);
  console.log(
    [
      `${name}: lost ${a.lost}, bare loop ${b.lost}, of ${ROUNDS * SENT}`,
      `relative to the bare loop: processor time ${ratio('cpuUs')}, lateness ${ratio('medianUs')} at the median, ${ratio('p99Us')} at the 99th percentile`,
    ].join('\n'),
  );
  expect(a.medianUs).toBeGreaterThan(0);
});

import { setTimeout as delay } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BARE_LOOP, LoopProcess, type LoopResult } from '../live/loop-process.ts';
import { percentile } from '../live/recording.ts';
import { PEDALS, WHEEL } from '../live/virtual-rig.ts';
import { costLines } from './cost-lines.ts';
import { bareLoad, drillCosts, echoCosts, PEDALS_HZ, WHEEL_HZ } from './drill-costs.ts';
import type { DrillRig } from './drill-rig.ts';
import { guestRig } from './guest-rig.ts';
import { recordedDrill } from './recorded-drill.ts';

/*
 * The built program (`npm run build`) on devices of a real kernel. The guest's clock counts instructions, a thousand million a
 * second, so that processor times and latencies are those of a machine several times slower than most, and repeat.
 */
const SMALL = { cols: 80, rows: 24 };
const LARGE = { cols: 160, rows: 48 };
const SENDING_S = 10;
let rig: DrillRig;

beforeAll(async () => {
  rig = await guestRig();
});

afterAll(() => rig.close());

async function send(): Promise<void> {
  const stream = (device: typeof PEDALS, rateHz: number) =>
    rig.player.stream(device, { rateHz, first: 0, count: SENDING_S * rateHz });
  const sendings = [await stream(PEDALS, PEDALS_HZ), await stream(WHEEL, WHEEL_HZ)];
  await Promise.all(sendings.map(({ finished }) => finished));
}

async function bareLoop(): Promise<LoopResult['results']> {
  const loop = await LoopProcess.start(BARE_LOOP, rig.devices);
  await delay(500);
  await send();
  await delay(500);
  return (await loop.finish()).results;
}

test('reports of ten seconds in the drill while it draws, relative to a bare loop', async () => {
  const [drill, bare] = [await recordedDrill(rig, SMALL, send), await bareLoop()];
  const late = (results: LoopResult['results'], share: number): number =>
    percentile(
      results.flatMap(({ latenessUs }) => latenessUs),
      share,
    );
  const ratio = (share: number): string => (late(drill, share) / late(bare, share)).toFixed(2);
  const sent = SENDING_S * (PEDALS_HZ + WHEEL_HZ);
  const lost = (results: LoopResult['results']): number =>
    sent - results.reduce((sum, { received }) => sum + received, 0);
  console.log(
    `drill, recording: lost ${lost(drill)}, bare loop ${lost(bare)}, of ${sent}; ` +
      `lateness ${ratio(0.5)} times the bare loop's at the median, ${ratio(0.99)} at the 99th percentile`,
  );
  expect(drill.map(({ received }) => received > 0)).toEqual([true, true]);
});

test('the drill relative to bare loops on the same devices', async () => {
  const load = await bareLoad(rig);
  const echo = await echoCosts(rig);
  const drill = {
    '80x24': await drillCosts(rig, SMALL),
    '160x48': await drillCosts(rig, LARGE),
  };
  console.log(costLines({ bareLoad: load, echo, drill }));
  expect(echo.latencyMs.length).toBeGreaterThan(0);
});

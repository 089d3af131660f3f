import { afterAll, beforeAll, bench, describe } from 'vitest';
import { costLines } from './cost-lines.ts';
import { bareLoad, type Costs, drillCosts, echoCosts } from './drill-costs.ts';
import type { DrillRig } from './drill-rig.ts';
import { standInRig } from './stand-in-rig.ts';

/*
 * The built program (`npm run build`) drilling on two devices at 1 kHz and 500 Hz, on a terminal that nobody draws.
 * Everything is real but the HID library, which reads pipes here: `npm run bench:live` measures the same on devices of a
 * real kernel, but in an emulated machine. Each run takes some reps' time; the lines printed at the end count, not the
 * table.
 */
const ONCE = { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 };
const SIZES = [
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
];
const measured: { load?: number; echo?: Costs } = {};
const drill: Record<string, Costs> = {};
let rig: DrillRig;

beforeAll(async () => {
  rig = await standInRig();
});

afterAll(async () => {
  await rig.close();
  const { load, echo } = measured;
  if (load === undefined || echo === undefined) return;
  process.stdout.write(costLines({ bareLoad: load, echo, drill }));
});

describe('two devices, with a stand-in for the HID library', () => {
  bench(
    'floor: bare loop on both devices',
    async () => {
      measured.load = await bareLoad(rig);
    },
    ONCE,
  );
  bench(
    'floor: bare loop that writes each level',
    async () => {
      measured.echo = await echoCosts(rig);
    },
    ONCE,
  );
  for (const size of SIZES) {
    const name = `${size.cols}x${size.rows}`;
    bench(
      `drill, ${name}`,
      async () => {
        drill[name] = await drillCosts(rig, size);
      },
      ONCE,
    );
  }
});

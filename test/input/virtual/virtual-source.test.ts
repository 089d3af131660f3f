import { firstValueFrom, take, toArray } from 'rxjs';
import { describe, expect, test } from 'vitest';
import type { DrillPhase, DrillView } from '../../../src/drill/drill-view.ts';
import { viewOf } from '../../../src/drill/view-of.ts';
import type { ReportBatch } from '../../../src/input/report-batch.ts';
import { createRigDecoder } from '../../../src/input/rig/rig-decoder.ts';
import {
  openVirtualSource,
  type VirtualSourceOptions,
} from '../../../src/input/virtual/open-virtual-source.ts';
import { virtualRig } from '../../../src/input/virtual/virtual-rig.ts';
import type { RigBatch } from '../../../src/trace/rig-batch.ts';
import { fresh, RAMP } from '../../drill/drill-rig.ts';

const IDLE = viewOf(fresh());

/** What the screen shows in the run of a rep whose cue comes one second after the start. */
function shown(atS: number, change: Partial<DrillView> = {}): DrillView {
  const phase: DrillPhase = atS < 1 ? 'countdown' : 'braking';
  return { ...IDLE, phase, atS, toCueS: atS < 1 ? 1 - atS : null, target: RAMP, ...change };
}

/** The first `seconds` of a simulated source that is shown `look`, as bytes and decoded. */
async function play(
  options: Partial<VirtualSourceOptions>,
  seconds: number,
  look: (atS: number) => DrillView = (atS) => shown(atS),
): Promise<{ readonly raw: readonly ReportBatch[]; readonly decoded: readonly RigBatch[] }> {
  const all = { preset: 'skilled', seed: 1, pace: 'simulated', bits: 16, ...options } as const;
  const source = openVirtualSource(all);
  const decoder = createRigDecoder(virtualRig(all.bits), source.devices);
  const raw: ReportBatch[] = [];
  const decoded: RigBatch[] = [];
  source.see(look(0));
  await new Promise<void>((resolve) => {
    const run = source.batches$.pipe(take(seconds * 125)).subscribe({
      next: (batch) => {
        raw.push(batch);
        decoded.push(decoder.decode(batch));
        source.see(look(batch.untilUs / 1e6));
      },
      complete: () => resolve(),
    });
    return run;
  });
  await source.close();
  return { raw, decoded };
}

const brakes = (decoded: readonly RigBatch[]) => decoded.flatMap(({ brake }) => [...brake.value]);
const times = (decoded: readonly RigBatch[]) => decoded.flatMap(({ brake }) => [...brake.timeS]);

describe('the bytes of a virtual rig', () => {
  test('come at 1 kHz and 500 Hz in batches of 8 ms from time 0 on', async () => {
    const { raw } = await play({}, 1);
    expect(raw.map(({ untilUs }) => untilUs)).toEqual(raw.map((_, i) => 8000 * (i + 1)));
    const devices = raw.flatMap(({ device, count }) => [...device.subarray(0, count)]);
    expect(devices.filter((device) => device === 0)).toHaveLength(1000);
    expect(devices.filter((device) => device === 1)).toHaveLength(500);
    const stamps = raw.flatMap(({ timeUs, count }) => [...timeUs.subarray(0, count)]);
    expect(stamps).toEqual(stamps.toSorted((a, b) => a - b));
  });

  test('are the same for the same seed and others for another', async () => {
    const bytes = async (seed: number) =>
      (await play({ seed }, 2)).raw.map((batch) => Buffer.from(batch.bytes).toString('hex'));
    const first = await bytes(5);
    expect(await bytes(5)).toEqual(first);
    expect(await bytes(6)).not.toEqual(first);
  });

  test.each([12, 16] as const)('carry a rep through %i-bit axes', async (bits) => {
    const { decoded } = await play({ bits }, 3);
    const peak = Math.max(...brakes(decoded));
    // the target's 80 % within the preset's habit and three standard deviations of force noise
    expect(peak).toBeGreaterThan(0.7);
    expect(peak).toBeLessThan(0.9);
    expect(
      brakes(decoded)
        .slice(0, 800)
        .every((level) => level === 0),
    ).toBe(true);
    expect(brakes(decoded).at(-1)).toBe(0);
    const fine = brakes(decoded).filter((level) => level > 0 && level < 1);
    const steps = fine.map((level) => level * Math.round(0.92 * (2 ** bits - 1)));
    for (const step of steps) expect(Math.abs(step - Math.round(step))).toBeLessThan(0.1);
  });

  test('carry steering to the left as positive degrees, and paddles', async () => {
    const steered = {
      ...RAMP,
      steering: { start: 0, end: 1, at: (t: number) => 90 * Math.min(1, t) },
    };
    const { decoded } = await play({}, 3, (atS) => shown(atS, { target: steered }));
    const angles = decoded.flatMap(({ steering }) => [...steering.value]);
    expect(Math.max(...angles)).toBeCloseTo(90, 1);
    const shifts = decoded.flatMap(({ buttons }) => buttons.filter(({ pressed }) => pressed));
    expect(shifts.map(({ action }) => action)).toEqual(['downshift', 'downshift']);
    expect(shifts[0]?.timeS).toBeCloseTo(1.3, 0);
  });
});

describe('the simulated driver', () => {
  test('times the press on the countdown with a noise of 30 ms', async () => {
    const presses: number[] = [];
    for (let seed = 1; seed <= 40; seed++) {
      const { decoded } = await play({ seed }, 1.4);
      presses.push(times(decoded)[brakes(decoded).findIndex((level) => level > 0.01)]! - 1);
    }
    const mean = presses.reduce((sum, x) => sum + x, 0) / presses.length;
    const variance = presses.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (presses.length - 1);
    // 95 % of samples of 40 lie within 0.82 to 1.28 times the true deviation (chi-square); allow a little more
    expect(Math.sqrt(variance)).toBeGreaterThan(0.022);
    expect(Math.sqrt(variance)).toBeLessThan(0.042);
    expect(Math.abs(mean)).toBeLessThan(0.02);
  });

  test('does nothing without a countdown and lifts when the drill is paused', async () => {
    const idle = await play({}, 1, (atS) => ({ ...IDLE, atS, target: RAMP }));
    expect(Math.max(...brakes(idle.decoded))).toBe(0);
    const paused = await play({}, 2, (atS) =>
      atS < 1.3 ? shown(atS) : { ...IDLE, phase: 'paused' },
    );
    expect(brakes(paused.decoded)[1280]).toBeGreaterThan(0.5);
    expect(brakes(paused.decoded)[1450]).toBe(0);
  });

  test('draws from memory what is not shown, and guesses what it never saw', async () => {
    const peakOf = async (look: (atS: number) => DrillView) => {
      const peaks = [];
      for (const seed of [1, 2, 3, 4, 5])
        peaks.push(Math.max(...brakes((await play({ seed }, 3, look)).decoded)));
      return peaks.toSorted((a, b) => a - b)[2]!;
    };
    const light = { ...RAMP, level: { ...RAMP.level, at: (t: number) => RAMP.level.at(t) / 2 } };
    const hidden = { target: null, feedback: 'first-of-day' } as const;
    const remembered = await peakOf((atS) =>
      shown(atS, atS < 0.5 ? { toCueS: null, target: light } : hidden),
    );
    expect(remembered).toBeCloseTo(0.4, 1);
    expect(await peakOf((atS) => shown(atS, hidden))).toBeGreaterThan(0.6);
  });
});

describe('at real pace', () => {
  test('stamps follow the monotonic clock without gap or overlap', async () => {
    const source = openVirtualSource({ preset: 'club', seed: 1, pace: 'real' });
    const beforeUs = Number(process.hrtime.bigint() / 1000n);
    const batches = await firstValueFrom(source.batches$.pipe(take(5), toArray()));
    const afterUs = Number(process.hrtime.bigint() / 1000n);
    await source.close();
    const stamps = batches.flatMap(({ timeUs, device, count }) =>
      [...timeUs.subarray(0, count)].filter((_, i) => device[i] === 0),
    );
    expect(stamps.length).toBeGreaterThan(0);
    stamps.slice(1).forEach((stamp, i) => {
      expect(stamp - stamps[i]!).toBe(1000);
    });
    expect(stamps[0]).toBeGreaterThanOrEqual(beforeUs);
    expect(stamps.at(-1)).toBeLessThanOrEqual(afterUs);
    expect(source.simulated).toBe(false);
  });

  test('ends when closed, twice if need be', async () => {
    const source = openVirtualSource({ preset: 'club', seed: 1, pace: 'real' });
    const all = firstValueFrom(source.batches$.pipe(toArray()));
    await source.close();
    await source.close();
    expect((await all).length).toBeLessThan(2);
    expect(source.label).toBe('virtual driver, club');
  });
});

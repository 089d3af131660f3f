import { from, NEVER, type Observable, throwError } from 'rxjs';
import { describe, expect, test } from 'vitest';
import { rigCheck } from '../../src/commands/rig-check.ts';
import type { ReportBatch } from '../../src/input/report-batch.ts';
import type { ReportSource } from '../../src/input/report-source.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { Problem } from '../../src/problem.ts';
import { batchOf, deviceOf, identity, type Report, word } from '../input/report-batches.ts';
import { calibration, WORD } from '../input/rig/calibration.ts';
import { fakeContext } from './fake-context.ts';

const RIG: Rig = {
  axes: [
    { role: 'brake', device: identity(1), field: WORD, calibration: calibration(0, 1000) },
    {
      role: 'throttle',
      device: identity(1),
      field: { ...WORD, bitOffset: 16 },
      calibration: calibration(0, 1000),
    },
  ],
  buttons: [],
  wheelLockDeg: null,
  foot: 'left',
  footwear: '',
};

/** 1 kHz for `seconds`: at rest for 2.1 s, then the brake goes up by one count each millisecond, and stays at rest from 8 s on. */
function batches(seconds: number): ReportBatch[] {
  return Array.from({ length: seconds * 125 }, (_, i) => {
    const reports = Array.from({ length: 8 }, (_, j): Report => {
      const ms = 8 * i + j;
      return [
        0,
        ms * 1000,
        [...word(ms < 8000 ? Math.max(0, Math.min(1899, ms - 2100)) : 0), 0, 0],
      ];
    });
    return batchOf((8 * i + 8) * 1000 - 1, reports, 2);
  });
}

interface Opened {
  readonly open: () => Promise<{ readonly source: ReportSource; readonly rig: Rig | null }>;
  readonly closed: () => number;
}

function opened(batches$: Observable<ReportBatch>, rig: Rig | null = RIG): Opened {
  let closed = 0;
  const source: ReportSource = {
    label: 'test',
    devices: [deviceOf(1, 'test pedals')],
    batches$,
    events$: NEVER,
    simulated: true,
    see: () => undefined,
    close: async () => {
      closed += 1;
    },
  };
  return { open: async () => ({ source, rig }), closed: () => closed };
}

const call = (values: Readonly<Record<string, string | boolean>>) => ({ positionals: [], values });

describe('rig check', () => {
  test('tells rate, noise, step and what goes wrong, then closes the source', async () => {
    const { open, closed } = opened(from(batches(10)));
    const context = fakeContext('/nowhere');
    expect(await rigCheck(call({}), context, open)).toBe(0);
    const text = context.printed();
    expect(text).toContain('test pedals: 1000/s all the time');
    expect(text).toContain('99 of 100 within 1.00 ms, jitter 0.00 ms, 0 gaps');
    expect(text).toContain('0..1899 counts, noise at rest 0 counts (0.0 %), step 1 count (0.10 %)');
    // Full scale is passed at 3.1 s, and left at 8 s.
    expect(text).toMatch(/limited +brake +full scale +4\.9 s at 100 %, 899 counts/);
    expect(text).toContain('Set full scale higher with `ebbline rig setup`.');
    expect(text).toMatch(/bad +throttle +movement +stuck, or not pressed/);
    expect(text).toMatch(/bad +all devices +drops +2 reports/);
    expect(text).toMatch(/good +test pedals +rate +1000 reports a second/);
    // What has to be mended comes before what is well.
    expect(text.indexOf('\ngood ')).toBeGreaterThan(text.lastIndexOf('\nlimited '));
    expect(
      text
        .split('\n')
        .slice(4)
        .filter((line) => line.length > 80),
    ).toEqual([]);
    expect(context.warned()).toContain('Touch nothing for 2 s');
    expect(closed()).toBe(1);
  });

  test('stops after the seconds it was given', async () => {
    const context = fakeContext('/nowhere');
    await rigCheck(call({ seconds: '2.5', json: true }), context, opened(from(batches(30))).open);
    const answer = JSON.parse(context.printed());
    expect(answer.elapsed_s).toBeGreaterThanOrEqual(2.5);
    expect(answer.elapsed_s).toBeLessThan(2.51);
  });

  test('as JSON is one object with units in its names', async () => {
    const context = fakeContext('/nowhere', { interactive: true });
    await rigCheck(call({ seconds: '4', json: true }), context, opened(from(batches(4))).open);
    const { devices, dropped_reports, verdicts } = JSON.parse(context.printed());
    expect(dropped_reports).toBe(2);
    expect(devices[0]).toMatchObject({ name: 'test pedals', streams_at_rest: true, gaps: 0 });
    expect(devices[0].rate_hz).toBeCloseTo(1000, 6);
    expect(devices[0].axes[0]).toMatchObject({
      role: 'brake',
      level: 1,
      max_counts: 1899,
      rest_span_counts: 0,
      step_counts: 1,
      level_per_count: 0.001,
      beyond_full_counts: 899,
    });
    expect(verdicts).toContainEqual({
      device: 'test pedals',
      role: 'throttle',
      check: 'movement',
      verdict: 'bad',
      found: expect.stringContaining('stuck, or not pressed'),
      fix: expect.stringContaining('rig setup'),
    });
    expect(devices[0].axes[1]).toMatchObject({ role: 'throttle', step_counts: null });
  });

  test('without a rig says so and still tells the rates', async () => {
    const context = fakeContext('/nowhere');
    await rigCheck(call({ seconds: '1' }), context, opened(from(batches(2)), null).open);
    expect(context.warned()).toContain('run `ebbline rig setup`');
    expect(context.printed()).toContain('1000/s');
  });

  test('a device that never spoke is waiting, not at 0 %', async () => {
    const context = fakeContext('/nowhere');
    const silent = Array.from({ length: 300 }, (_, i) => batchOf(8000 * i, []));
    await rigCheck(call({ seconds: '1' }), context, opened(from(silent)).open);
    expect(context.printed()).toContain('test pedals: waiting for first movement');
    expect(context.printed()).toMatch(/brake +waiting for first movement/);
    expect(context.printed()).not.toContain('0.0 %');
  });

  test('closes a source that fails', async () => {
    const { open, closed } = opened(throwError(() => new Problem('gone', { next: 'Plug it in.' })));
    await expect(rigCheck(call({}), fakeContext('/nowhere'), open)).rejects.toThrow('gone');
    expect(closed()).toBe(1);
  });

  test.each(['', '0', '-3', 'ten', '1e9', 'NaN'])('refuses --seconds %s', async (seconds) => {
    const { open } = opened(NEVER);
    await expect(rigCheck(call({ seconds }), fakeContext('/x'), open)).rejects.toMatchObject({
      exitCode: 2,
    });
  });
});

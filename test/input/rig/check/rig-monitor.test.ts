import { describe, expect, test } from 'vitest';
import { RigMonitor } from '../../../../src/input/rig/check/rig-monitor.ts';
import type { AxisAssignment, Rig } from '../../../../src/input/rig/rig.ts';
import { NAMED_PEDALS } from '../../../reference/descriptors.ts';
import { batchOf, deviceOf, identity, type Report, word } from '../../report-batches.ts';
import { calibration, WORD } from '../calibration.ts';

const PEDALS = deviceOf(1, 'pedals', NAMED_PEDALS);

function rigOf(axis: Partial<AxisAssignment>, wheelLockDeg: number | null = null): Rig {
  const brake: AxisAssignment = {
    role: 'brake',
    device: identity(1),
    field: { ...WORD, bitOffset: 16 },
    calibration: calibration(1000, 9000),
  };
  return { axes: [{ ...brake, ...axis }], buttons: [], wheelLockDeg, foot: 'left', footwear: '' };
}

const BRAKE = rigOf({});
/** The brake is the second of three words. */
const report = (timeMs: number, counts: number): Report => [
  0,
  timeMs * 1000,
  [0, 0, ...word(counts), 0, 0],
];

function watched(rig: Rig | null, reports: readonly Report[], untilMs: number) {
  const monitor = new RigMonitor(rig, [PEDALS], { restS: 1, endS: 60 });
  monitor.batch(batchOf(0, []));
  monitor.batch(batchOf(untilMs * 1000, reports, 5));
  return monitor.read();
}

function axisOf(rig: Rig, reports: readonly Report[], untilMs: number) {
  return watched(rig, reports, untilMs).devices[0]!.axes[0]!;
}

describe('an axis under watch', () => {
  test('noise is what it does in the first second', () => {
    // 1000, 1004, 1002, 1002 at rest: span 4, mean 1002, sum of squares 8, deviation sqrt(8 / 3).
    const rest = [1000, 1004, 1002, 1002].map((counts, i) => report(100 * i, counts));
    const axis = axisOf(BRAKE, [...rest, report(1000, 5000), report(1500, 1000)], 2000);
    expect(axis.restSpanCounts).toBe(4);
    expect(axis.restNoiseCounts).toBeCloseTo(Math.sqrt(8 / 3), 9);
    expect([axis.minCounts, axis.maxCounts]).toEqual([1000, 5000]);
  });

  test('a device that is silent at rest has no noise to tell', () => {
    const axis = axisOf(BRAKE, [report(1200, 1500)], 2000);
    expect(axis.restSpanCounts).toBeNull();
    expect(axis.restNoiseCounts).toBeNull();
    expect(axis.stepCounts).toBeNull();
    expect(axis.value).toBe(0.0625);
  });

  test('the step is that of the sensor, not of the field', () => {
    // A 10-bit sensor in a 16-bit field moves by 64.
    const counts = [1024, 1088, 1088, 1280, 1216];
    const axis = axisOf(
      BRAKE,
      counts.map((value, i) => report(10 * i, value)),
      100,
    );
    expect(axis.stepCounts).toBe(64);
    expect(axis.perCount).toBe(1 / 8000);
  });

  test('time at full and how far beyond, held until the next report', () => {
    const axis = axisOf(
      BRAKE,
      [report(0, 1000), report(100, 9000), report(300, 9400), report(350, 8999), report(900, 9100)],
      1000,
    );
    expect(axis.atFullS).toBeCloseTo(0.35, 9);
    expect(axis.beyondFullCounts).toBe(400);
    expect(axis.atLimitS).toBe(0);
  });

  test('an axis that counts down goes beyond full downwards', () => {
    const down = rigOf({ calibration: calibration(9000, 1000) });
    expect(axisOf(down, [report(0, 700)], 500)).toMatchObject({
      beyondFullCounts: 300,
      atFullS: 0.5,
      atLimitS: 0,
    });
    expect(axisOf(down, [report(0, 0)], 500).atLimitS).toBe(0.5);
  });

  test('the end of the sensor is the described one', () => {
    expect(axisOf(BRAKE, [report(100, 10000), report(350, 9999)], 1000).atLimitS).toBeCloseTo(
      0.25,
      9,
    );
  });

  test('a wheel is read in degrees and has no full', () => {
    const wheel = rigOf({ role: 'steering', calibration: calibration(5000, 1000) }, 800);
    expect(axisOf(wheel, [report(0, 1000)], 500)).toMatchObject({
      value: 400,
      perCount: 0.1,
      atFullS: 0,
      beyondFullCounts: 0,
      atLimitS: 0,
    });
  });

  test('an axis that never spoke is unknown', () => {
    expect(axisOf(BRAKE, [], 500)).toMatchObject({ counts: null, value: null, minCounts: null });
  });
});

describe('a rig under watch', () => {
  test('time, drops and devices are told without a rig too', () => {
    const reading = watched(null, [report(0, 1), report(10, 2), report(20, 2)], 2500);
    expect(reading).toMatchObject({ elapsedS: 2.5, dropped: 5 });
    expect(reading.devices[0]).toMatchObject({ name: 'pedals', reports: 3, axes: [] });
    expect(reading.devices[0]!.rateHz).toBeCloseTo(100, 9);
    expect(reading.devices[0]!.uniqueRateHz).toBeCloseTo(50, 9);
  });

  test('a device that went is not connected', () => {
    const monitor = new RigMonitor(BRAKE, [PEDALS], { restS: 1, endS: 60 });
    monitor.deviceEvent({ kind: 'lost', device: 0, atUs: 0, reason: 'unplugged' });
    expect(monitor.read().devices[0]?.connected).toBe(false);
  });
});

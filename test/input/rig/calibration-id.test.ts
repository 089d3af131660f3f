import { describe, expect, test } from 'vitest';
import { calibrationId } from '../../../src/input/rig/calibration-id.ts';
import type { AxisAssignment, AxisCalibration } from '../../../src/input/rig/rig.ts';
import { identity } from '../report-batches.ts';
import { calibration, WORD } from './calibration.ts';

const brake: AxisAssignment = {
  role: 'brake',
  device: identity(1, { serial: 'A7' }),
  field: WORD,
  calibration: calibration(100, 4000),
};
const throttle: AxisAssignment = { ...brake, role: 'throttle', field: { ...WORD, bitOffset: 16 } };
const rig = { axes: [brake, throttle], wheelLockDeg: 900 };
const withCalibration = (more: Partial<AxisCalibration>): typeof rig => ({
  ...rig,
  axes: [{ ...brake, calibration: { ...brake.calibration, ...more } }, throttle],
});

describe('calibrationId', () => {
  test('is sixteen hexadecimal digits', () => {
    expect(calibrationId(rig)).toMatch(/^[0-9a-f]{16}$/);
  });

  test('does not depend on the order of axes or of keys', () => {
    const { role, device, field, calibration: calibrated } = brake;
    const turned = { calibration: calibrated, field, device, role };
    expect(calibrationId({ wheelLockDeg: 900, axes: [throttle, turned] })).toBe(calibrationId(rig));
    expect(calibrationId(JSON.parse(JSON.stringify(rig)))).toBe(calibrationId(rig));
  });

  const load = { newtonsPerCount: 0.25, zeroCounts: 100, loads: [], residualN: null };
  test.each([
    ['rest', withCalibration({ restCounts: 101 })],
    ['full', withCalibration({ fullCounts: 4001 })],
    ['dead zone at the start', withCalibration({ deadStart: 0.01 })],
    ['dead zone at the end', withCalibration({ deadEnd: 0.01 })],
    ['sensor', withCalibration({ sensor: 'force' })],
    ['load', withCalibration({ load })],
    ['lock', { ...rig, wheelLockDeg: 540 }],
    ['serial', { ...rig, axes: [{ ...brake, device: identity(1) }, throttle] }],
    ['field', { ...rig, axes: [{ ...brake, field: { ...WORD, bitOffset: 32 } }, throttle] }],
    ['axes', { ...rig, axes: [brake] }],
  ])('changes with the %s', (_name, other) => {
    expect(calibrationId(other)).not.toBe(calibrationId(rig));
  });

  test('does not change with what the driver is told of a load', () => {
    const told = { ...load, loads: [{ newtons: 100, counts: 500 }], residualN: 2 };
    expect(calibrationId(withCalibration({ load: told }))).toBe(
      calibrationId(withCalibration({ load })),
    );
  });
});

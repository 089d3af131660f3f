import { expect, test } from 'vitest';
import { brakeStepLevel } from '../../../src/input/rig/brake-step-level.ts';
import type { AxisAssignment } from '../../../src/input/rig/rig.ts';
import { calibration, WORD } from './calibration.ts';

const device = {
  vendorId: 1,
  productId: 2,
  serial: null,
  interfaceNumber: 0,
  usagePage: 1,
  usage: 4,
};

function axis(role: AxisAssignment['role'], rest: number, full: number): AxisAssignment {
  return { role, device, field: WORD, calibration: calibration(rest, full) };
}

test('one count of a 10-bit pedal is 1/1023, whichever way it counts', () => {
  expect(brakeStepLevel({ axes: [axis('throttle', 0, 255), axis('brake', 1023, 0)] })).toBe(
    1 / 1023,
  );
});

test('dead zones make the step larger', () => {
  const brake = { ...axis('brake', 0, 1000) };
  const dead = { ...brake, calibration: { ...brake.calibration, deadStart: 0.3, deadEnd: 0.2 } };
  expect(brakeStepLevel({ axes: [dead] })).toBeCloseTo(0.002, 12);
});

test('a rig without a brake has no step', () => {
  expect(brakeStepLevel({ axes: [axis('throttle', 0, 255)] })).toBe(0);
});

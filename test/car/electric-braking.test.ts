import { describe, expect, test } from 'vitest';
import { electricBrakingN } from '../../src/car/electric-braking.ts';
import { expectRelative } from '../close-to.ts';

// By hand: 1100 N m on 0.34 m is 3235.294 N; 200 kW at 80 m/s is 2500 N; half way between 10 and 30 m/s half of the
// first is left.
const MOTOR = { torqueNm: 1100, powerW: 200e3, fadeFromMps: 30, fadeOutMps: 10 };

describe('a motor on the rear axle', () => {
  test('is held by torque, by power and by the fade', () => {
    expectRelative(electricBrakingN(MOTOR, 50, 0.34), 3235.29412, 1e-8);
    expectRelative(electricBrakingN(MOTOR, 80, 0.34), 2500, 1e-12);
    expectRelative(electricBrakingN(MOTOR, 20, 0.34), 1617.64706, 1e-8);
    expect(electricBrakingN(MOTOR, 10, 0.34)).toBe(0);
    expect(electricBrakingN(MOTOR, 0, 0.34)).toBe(0);
  });

  test('none, or one whose battery is full, does nothing', () => {
    expect(electricBrakingN(null, 50, 0.34)).toBe(0);
  });
});

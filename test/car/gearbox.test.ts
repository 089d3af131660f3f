import { describe, expect, test } from 'vitest';
import {
  brakingTorqueNm,
  type Engine,
  engineBrakingN,
  engineRpm,
  type Gearbox,
  overallRatio,
  overRevSpeedMps,
  unmatchedShiftN,
} from '../../src/car/gearbox.ts';
import { expectRelative } from '../close-to.ts';

const box: Gearbox = {
  ratios: [2.6, 1.9],
  finalDrive: 3.4,
  efficiency: 1,
  drivenWheelRadiusM: 0.33,
  revLimitRpm: 7500,
  shiftS: 0.2,
  blip: false,
};
const engine: Engine = {
  driveTorque: [
    { rpm: 2000, torqueNm: 300 },
    { rpm: 6000, torqueNm: 420 },
  ],
  brakingTorque: [
    { rpm: 2000, torqueNm: 40 },
    { rpm: 8000, torqueNm: 70 },
  ],
  inertiaKgm2: 0.15,
};

describe('engine speed', () => {
  test('of a 0.65 m wheel at 48 km/h and 39/8 (Rajput, Internal Combustion Engines, ex. 17.21, p. 584)', () => {
    const axle: Gearbox = { ...box, ratios: [1], finalDrive: 39 / 8, drivenWheelRadiusM: 0.325 };
    expectRelative(engineRpm(axle, 1, 48 / 3.6), 1909.859, 1e-5);
  });

  test('over-rev speed at 7500 rpm, hand-worked', () => {
    expectRelative(overRevSpeedMps(box, 1), 29.319162, 1e-7);
  });

  test('a gear the box does not have is refused', () => {
    expect(() => overallRatio(box, 3)).toThrow(RangeError);
  });
});

describe('engine braking', () => {
  test('63.6620 N m are 1246.23 N at the axle, hand-worked', () => {
    expectRelative(engineBrakingN(box, 2, 63.662), 1246.23, 1e-5);
  });

  test('losses add to it', () => {
    expectRelative(
      engineBrakingN({ ...box, efficiency: 0.8 }, 2, 50),
      engineBrakingN(box, 2, 50) / 0.8,
      1e-12,
    );
  });

  test('torque between, on and outside the given points', () => {
    expect([1000, 2000, 5000, 8000, 9000].map((rpm) => brakingTorqueNm(engine, rpm))).toEqual([
      40, 40, 55, 70, 70,
    ]);
  });
});

describe('a downshift that is not matched, hand-worked', () => {
  const shift = { fromGear: 2, toGear: 1, speedMps: 40, overS: 0.25 };

  test('4636.74 N at the axle from 7477.39 to 10232.22 rpm', () => {
    expectRelative(engineRpm(box, 2, 40), 7477.39, 1e-5);
    expectRelative(engineRpm(box, 1, 40), 10232.22, 1e-5);
    expectRelative(unmatchedShiftN(box, engine, shift), 4636.74, 1e-5);
  });

  test('a blip takes it away', () => {
    expect(unmatchedShiftN({ ...box, blip: true }, engine, shift)).toBe(0);
  });
});

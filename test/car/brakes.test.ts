import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  axleForcesN,
  frontBrakeShare,
  linePressuresPa,
  pedalForceN,
  uniformPressureRadiusM,
  wheelTorqueNm,
} from '../../src/car/brakes.ts';
import { barFromPascals, newtonsFromLbf, pascalsFromPsi } from '../../src/units.ts';
import { expectRelative } from '../close-to.ts';
import { GT_BRAKES } from '../reference/gt-example.ts';

describe('hydraulics of the GT example at 700 N', () => {
  // Worked by hand from the equations of Limpert, Brake Design and Safety, ch. 5.
  const pressures = linePressuresPa(GT_BRAKES, 700);
  const forces = axleForcesN(GT_BRAKES, pressures);

  test('line pressures', () => {
    expectRelative(barFromPascals(pressures.front), 71.2223, 1e-6);
    expectRelative(barFromPascals(pressures.rear), 43.9454, 1e-6);
  });

  test('wheel torques', () => {
    expectRelative(wheelTorqueNm(GT_BRAKES.front, pressures.front, 0), 3093.365, 1e-6);
    expectRelative(wheelTorqueNm(GT_BRAKES.rear, pressures.rear, 0), 886.115, 1e-6);
  });

  test('axle forces, their share and the braking rate without drag', () => {
    expectRelative(forces.front, 18747.67, 1e-6);
    expectRelative(forces.rear, 5370.39, 1e-6);
    expectRelative(frontBrakeShare(GT_BRAKES), 0.777329, 1e-6);
    expectRelative((forces.front + forces.rear) / (1250 * 9.80665), 1.967486, 1e-6);
  });

  test('the share is the one the forces have', () => {
    expectRelative(frontBrakeShare(GT_BRAKES), forces.front / (forces.front + forces.rear), 1e-14);
  });
});

test('line pressure of a 7/8 in master cylinder at 1000 psi and ratio 5', () => {
  // Published brake-pressure reference: area 0.601 in^2, foot force 120.264 lbf.
  const area = (Math.PI * (0.875 * 0.0254) ** 2) / 4;
  const brakes = {
    ...GT_BRAKES,
    balanceBarFront: 1,
    front: { ...GT_BRAKES.front, masterCylinderAreaM2: area },
  };
  expectRelative(pedalForceN(brakes, pascalsFromPsi(1000)), newtonsFromLbf(120.264), 1e-5);
});

test('student car of a public sizing script, g 9.81', () => {
  const area = (mm: number): number => (Math.PI * (mm / 1000) ** 2) / 4;
  const brakes = {
    pedalRatio: 2.5,
    pedalEfficiency: 1,
    balanceBarFront: 0.71,
    pushOutPa: 0,
    rearValve: null,
    front: {
      masterCylinderAreaM2: area(12.7),
      pistonAreaM2: area(32),
      padFriction: 0.4,
      effectiveRadiusM: 0.115,
      wheelRadiusM: 0.5207 / 2,
    },
    rear: {
      masterCylinderAreaM2: area(12.7),
      pistonAreaM2: area(27),
      padFriction: 0.4,
      effectiveRadiusM: 0.115,
      wheelRadiusM: 0.5207 / 2,
    },
  };
  const pressures = linePressuresPa(brakes, 500);
  expectRelative(barFromPascals(pressures.front), 70.0601, 1e-5);
  expectRelative(barFromPascals(pressures.rear), 28.6161, 1e-5);
  const forces = axleForcesN(brakes, pressures);
  expectRelative(forces.front, 3982.18, 1e-5);
  expectRelative(forces.rear, 1157.95, 1e-5);
  expectRelative((forces.front + forces.rear) / (295 * 9.81), 1.776163, 1e-5);
});

describe('relations', () => {
  test('pressure to pedal force and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (foot, push) => {
          const brakes = { ...GT_BRAKES, pushOutPa: push };
          const pressures = linePressuresPa(brakes, foot);
          expectRelative(pedalForceN(brakes, pressures.front), foot, 1e-12);
        },
      ),
    );
  });

  test('pads do not touch below the push-out pressure', () => {
    expect(wheelTorqueNm(GT_BRAKES.front, 0.4e5, 0.5e5)).toBe(0);
    expect(wheelTorqueNm(GT_BRAKES.front, 1.5e5, 0.5e5)).toBeCloseTo(
      wheelTorqueNm(GT_BRAKES.front, 1e5, 0),
      9,
    );
  });

  test('a ring thin against its radius has its mean radius, a full disc two thirds', () => {
    expect(uniformPressureRadiusM(0.0999, 0.1001)).toBeCloseTo(0.1, 6);
    expect(uniformPressureRadiusM(0, 0.3)).toBeCloseTo(0.2, 12);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakeForcesN, pedalForceOf } from '../../src/car/brake-force.ts';
import type { Brakes } from '../../src/car/brakes.ts';
import { frontBrakeShare, linePressuresPa } from '../../src/car/brakes.ts';
import { beforeValvePa, behindValvePa } from '../../src/car/rear-valve.ts';
import { barFromPascals } from '../../src/units.ts';
import { expectRelative } from '../close-to.ts';
import { GT_BRAKES } from '../reference/gt-example.ts';

// Knee at 30 bar, slope 0.4. Worked by hand for 700 N at the pedal of the GT example (front 71.2223, rear 43.9454 bar
// without the valve): rear 30 + 0.4 (43.9454 - 30) bar, then torque and force as in Limpert, Brake Design and Safety,
// ch. 5; the valve as in its ch. 7.
const VALVE = { kneePa: 30e5, slope: 0.4 };
const WITH_VALVE: Brakes = { ...GT_BRAKES, rearValve: VALVE };

describe('rear valve', () => {
  test('rear pressure and forces at 700 N', () => {
    expectRelative(barFromPascals(linePressuresPa(WITH_VALVE, 700).rear), 35.57816, 1e-6);
    const forces = brakeForcesN(WITH_VALVE, 700);
    expectRelative(forces.front, 18747.66, 1e-6);
    expectRelative(forces.rear, 4347.8664, 1e-5);
  });

  test('with the pads touching at 0.8 bar', () => {
    const brakes = { ...WITH_VALVE, pushOutPa: 0.8e5 };
    expectRelative(pedalForceOf(brakes)(22787.1794), 700, 1e-5);
    const { front, rear } = brakeForcesN(brakes, 700);
    expectRelative(front / (front + rear), 0.81348716, 1e-6);
  });

  test('does nothing below its knee and none does nothing', () => {
    expect(behindValvePa(VALVE, 29e5)).toBe(29e5);
    expect(behindValvePa(null, 90e5)).toBe(90e5);
    expect(beforeValvePa({ ...VALVE, slope: 0 }, 40e5)).toBe(Number.POSITIVE_INFINITY);
    expect(beforeValvePa(VALVE, 29e5)).toBe(29e5);
  });

  test('35.57816 bar behind it are 43.9454 bar in front', () => {
    expectRelative(beforeValvePa(VALVE, 35.57816e5), 43.9454e5, 1e-6);
  });

  test('a shut valve keeps the rear at the knee', () => {
    const brakes = { ...WITH_VALVE, rearValve: { kneePa: 30e5, slope: 0 } };
    expect(linePressuresPa(brakes, 5000).rear).toBe(30e5);
  });
});

test('pedal force to brake force and back, over every bend', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 5e5, noNaN: true }),
      fc.double({ min: 1e5, max: 60e5, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (share, pushOutPa, kneePa, slope) => {
        const brakes = { ...GT_BRAKES, pushOutPa, rearValve: { kneePa, slope } };
        const touching = pedalForceOf(brakes)(0);
        const pedal = touching + 1 + 2000 * share;
        const { front, rear } = brakeForcesN(brakes, pedal);
        expectRelative(pedalForceOf(brakes)(front + rear), pedal, 1e-9);
        const none = brakeForcesN(brakes, touching);
        expect(none.front + none.rear).toBeLessThan(1e-6);
      },
    ),
  );
});

test('pads that touch at the rear first, with little of the foot on the front', () => {
  // at 0.2 on the front the rear pads touch at a third of the pedal force that the front ones take
  const brakes = { ...GT_BRAKES, balanceBarFront: 0.2, pushOutPa: 1e5 };
  for (const pedal of [10, 20, 40, 400]) {
    const { front, rear } = brakeForcesN(brakes, pedal);
    if (pedal < 15) expect([front, rear > 0]).toEqual([0, true]);
    expectRelative(pedalForceOf(brakes)(front + rear), pedal, 1e-9);
  }
});

test('without push-out and valve the share is the fixed one at any force', () => {
  for (const pedal of [1, 10, 500, 2500]) {
    const { front, rear } = brakeForcesN(GT_BRAKES, pedal);
    expectRelative(front / (front + rear), frontBrakeShare(GT_BRAKES), 1e-12);
  }
});

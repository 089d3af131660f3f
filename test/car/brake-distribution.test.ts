import { describe, test } from 'vitest';
import { downforceN, dragN } from '../../src/car/aero.ts';
import {
  adhesionUtilisation,
  criticalRateG,
  idealFrontShare,
  lockUpForcesN,
  lockUpRatesG,
} from '../../src/car/brake-distribution.ts';
import { frontPressurePa, pedalForceN } from '../../src/car/brakes.ts';
import type { Chassis } from '../../src/car/chassis.ts';
import { loadTransferN, staticAxleLoadsN, weightN } from '../../src/car/chassis.ts';
import { barFromPascals } from '../../src/units.ts';
import { expectRelative } from '../close-to.ts';
import { GT_AERO, GT_BRAKES, GT_CHASSIS } from '../reference/gt-example.ts';

const PHI = 0.777329;
const G = 9.80665;

describe('distribution of the GT example', () => {
  // Hand-worked from Gillespie, Fundamentals of Vehicle Dynamics, ch. 3.
  test.each([
    [0.6, 0.428313, 0.954126],
    [1.0, 0.795643, 1.312024],
    [1.4, 1.258038, 1.563347],
  ])('locks at friction %f', (mu, front, rear) => {
    const rates = lockUpRatesG(GT_CHASSIS, PHI, mu);
    expectRelative(rates.front, front, 1e-5);
    expectRelative(rates.rear, rear, 1e-5);
  });

  test('both axles lock together', () => {
    expectRelative(criticalRateG(GT_CHASSIS, PHI), 1.713457, 1e-5);
  });

  test('ideal share at 1.2 g, with the axle loads it comes from', () => {
    expectRelative(idealFrontShare(GT_CHASSIS, 1.2), 0.688462, 1e-6);
    const loads = staticAxleLoadsN(GT_CHASSIS);
    const transfer = loadTransferN(GT_CHASSIS, 1.2 * G);
    expectRelative(loads.front + transfer, 8439.377, 1e-6);
    expectRelative(loads.rear - transfer, 3818.936, 1e-6);
    expectRelative((1.2 * (loads.front + transfer)) / weightN(GT_CHASSIS), 0.826154, 1e-5);
  });

  test('adhesion utilisation at 0.8 g (UN R13-H annex 5 algebra)', () => {
    const used = adhesionUtilisation(GT_CHASSIS, PHI, 0.8);
    expectRelative(used.front, 1.004251, 1e-6);
    expectRelative(used.rear, 0.467834, 2e-6);
  });

  test.each([
    [75, 26549.01, 78.401, 770.56, 2.44112],
    [50, 20367.01, 60.145, 591.13, 1.78385],
    [25, 16657.82, 49.192, 483.47, 1.38949],
  ])('front limit with downforce at %i m/s', (speed, force, bar, foot, rateG) => {
    const limit = lockUpForcesN(GT_CHASSIS, PHI, 1.4, downforceN(GT_AERO, speed)).front;
    expectRelative(limit, force, 1e-5);
    const pressure = frontPressurePa(GT_BRAKES, PHI * limit);
    expectRelative(barFromPascals(pressure), bar, 1e-5);
    expectRelative(pedalForceN(GT_BRAKES, pressure), foot, 1e-5);
    expectRelative((limit + dragN(GT_AERO, speed)) / weightN(GT_CHASSIS), rateG, 1e-5);
  });

  test('engine braking of 1246.23 N moves the rear lock from 1.312024 to 1.112335 g', () => {
    const withEngine = lockUpForcesN(GT_CHASSIS, PHI, 1, { front: 0, rear: 0 }, 1246.23);
    expectRelative((withEngine.rear + 1246.23) / weightN(GT_CHASSIS), 1.112335, 1e-5);
    const without = lockUpForcesN(GT_CHASSIS, PHI, 1);
    expectRelative(without.rear / weightN(GT_CHASSIS), 1.312024, 1e-5);
  });
});

describe('Bevan, The Theory of Machines, ch. 8 example 6, p. 264 (g 32.2 ft/s^2)', () => {
  // Wheelbase 9.5 ft, centre of gravity 2 ft high and 4 ft before the rear axle, 30 mph.
  const feet: Chassis = {
    massKg: 1,
    cgToFrontM: 5.5,
    cgToRearM: 4,
    cgHeightM: 2,
    frontWheelRadiusM: 1,
    rearWheelRadiusM: 1,
  };
  const distance = (rate: number): number => 44 ** 2 / (2 * 32.2 * rate);

  test.each([
    [0.1, 530, 699, 301, 0.5],
    [0.6, 97.5, 104, 50.1, 0.5],
  ])('stops at friction %f', (mu, rear, front, all, tolerance) => {
    expectRelative(distance(lockUpRatesG(feet, 0, mu).rear), rear, tolerance / rear);
    expectRelative(distance(lockUpRatesG(feet, 1, mu).front), front, tolerance / front);
    expectRelative(distance(mu), all, tolerance / all);
  });

  test.each([
    [0.1, 0.792, 0.0005],
    [0.6, 1.21, 0.005],
  ])('front to rear ratio at friction %f', (mu, ratio, tolerance) => {
    const share = idealFrontShare(feet, mu);
    expectRelative(share / (1 - share), ratio, tolerance / ratio);
  });
});

test('axle-only stops: L 2.5, h 0.6, b 1.15 m, friction 0.5, 45 km/h, g 9.81', () => {
  const car: Chassis = {
    massKg: 1,
    cgToFrontM: 1.35,
    cgToRearM: 1.15,
    cgHeightM: 0.6,
    frontWheelRadiusM: 1,
    rearWheelRadiusM: 1,
  };
  const distance = (rate: number): number => 12.5 ** 2 / (2 * 9.81 * rate);
  expectRelative(distance(lockUpRatesG(car, 0, 0.5).rear), 33.0351, 1e-5);
  expectRelative(distance(lockUpRatesG(car, 1, 0.5).front), 30.4702, 1e-5);
  expectRelative(distance(0.5), 15.9276, 1e-5);
});

test('axle reactions while braking: 1500 kg, L 1.5, h 0.5, 0.8 m behind the front axle, friction 0.3, g 9.81', () => {
  const car: Chassis = {
    massKg: 1500,
    cgToFrontM: 0.8,
    cgToRearM: 0.7,
    cgHeightM: 0.5,
    frontWheelRadiusM: 1,
    rearWheelRadiusM: 1,
  };
  const scale = 9.81 / G;
  const loads = staticAxleLoadsN(car);
  const transfer = loadTransferN(car, 0.3 * 9.81);
  expectRelative(loads.front * scale + transfer, 8338.5, 1e-6);
  expectRelative(loads.rear * scale - transfer, 6376.5, 1e-6);
});

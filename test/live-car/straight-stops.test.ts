import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import { expectRelative } from '../close-to.ts';
import { recordOf } from './rigs.ts';
import {
  BRAKES_AND_AIR,
  MASS_KG,
  NO_AIR,
  PER_PEDAL_N,
  passing,
  STICKY,
  straightZone,
} from './straight.ts';

const G = 9.80665;
/** Full scale of the GT example is 1000 N. Levels that are multiples of 2^-16 lose nothing on the record's grid. */
const FULL_SCALE_N = 1000;
const step = (level: number) => (timeS: number) => (timeS >= 0 ? level : 0);

function stop(car: Car, from: number, to: number, brake: (timeS: number) => number, endS: number) {
  const run = driveRecord(straightZone(car, from), recordOf({ brake, endS }));
  return { run, ...passing(run, to) };
}

describe('constant brake force on a straight', () => {
  test('without air: t = (v0 - v1) / D, s = (v0^2 - v1^2) / (2 D)', () => {
    const D = (0.5 * FULL_SCALE_N * PER_PEDAL_N) / MASS_KG;
    const { timeS, placeM } = stop(NO_AIR, 80, 20, step(0.5), 5);
    expectRelative(timeS, 60 / D, 1e-6);
    expectRelative(placeM, (80 ** 2 - 20 ** 2) / (2 * D), 1e-6);
  });

  test('against drag: s = ln((A + B v0^2) / (A + B v1^2)) / (2 B), t by the arc tangent', () => {
    const A = (0.375 * FULL_SCALE_N * PER_PEDAL_N) / MASS_KG;
    const B = (0.5 * 1.2 * 1) / MASS_KG;
    const { timeS, placeM } = stop(STICKY, 75, 25, step(0.375), 6);
    const angle = (v: number) => Math.atan(v * Math.sqrt(B / A));
    expectRelative(timeS, (angle(75) - angle(25)) / Math.sqrt(A * B), 1e-6);
    expectRelative(placeM, Math.log((A + B * 75 ** 2) / (A + B * 25 ** 2)) / (2 * B), 1e-6);
  });

  // A ramp of 0.25 s to 1.2 g from 50 m/s stops in 112.439793 m: v0^2 / (2 D) + v0 t_r / 2 - D t_r^2 / 24. Here until
  // 2 m/s, and the car rolls on at 50 m/s until the brake takes hold at 1.5 %, which loses 1 mm/s.
  test('ramp, then hold', () => {
    const D = 1.2 * G;
    const level = (MASS_KG * D) / PER_PEDAL_N / FULL_SCALE_N;
    // In the middle of the step for which a sample is held.
    const ramp = (timeS: number) => Math.max(0, Math.min(1, (timeS + 0.0005) / 0.25)) * level;
    const { placeM } = stop(NO_AIR, 50, 2, ramp, 5);
    expect(Math.abs(placeM - (112.439793 - 2 ** 2 / (2 * D)))).toBeLessThan(0.01);
  });
});

describe('at the limit of grip', () => {
  // A = mu g, B = (mu ClA + CdA) rho / (2 m) with mu 1.4: 119.546787 m and 2.516624 s from 75 to 25 m/s.
  test('with both axles at their limit: drag and downforce', () => {
    const wheel = { inertiaKgm2: 1.2, slidingShare: 1 };
    const car = {
      ...BRAKES_AND_AIR,
      wheels: { front: wheel, rear: wheel },
      fullScalePedalForceN: 4000,
    };
    const { timeS, placeM } = stop(car, 75, 25, step(1), 3);
    expectRelative(placeM, 119.546787, 1e-6);
    expectRelative(timeS, 2.516624, 1e-6);
  });

  // Front-limited with the brakes' own distribution: A 12.337134, B 0.00206259; 136.6047 m and 2.867325 s, the pedal force
  // falling from 770.56 N at 75 m/s to 483.47 N at 25 m/s with the square of the speed.
  test('front axle at its limit by bleeding the pedal as downforce fades', () => {
    const [A, B] = [12.337134, 0.00206259];
    const speed = (t: number) =>
      Math.sqrt(A / B) * Math.tan(Math.atan(75 * Math.sqrt(B / A)) - Math.sqrt(A * B) * t);
    const perW = (770.56 - 483.47) / (75 ** 2 - 25 ** 2);
    const pedal = (t: number) => 483.47 + perW * (speed(Math.max(0, t)) ** 2 - 25 ** 2);
    const level = (t: number) => (t >= 0 ? (0.9998 * pedal(t + 0.0005)) / FULL_SCALE_N : 0);
    const { run, timeS, placeM } = stop(settled(BRAKES_AND_AIR), 75, 25, level, 3);
    expectRelative(timeS, 2.867325, 1e-3);
    expectRelative(placeM, 136.6047, 1e-3);
    const from = run.columns.timeS.findIndex((t) => t >= 0.1);
    for (const use of run.columns.frontUse.subarray(from, from + 2500))
      expect(Math.abs(use - 1)).toBeLessThan(1e-3);
    expect(run.end.front.slip).toBeLessThan(0.01);
  });
});

/** Pitch so quick that the load is there at once. */
function settled(car: Car): Car {
  return { ...car, pitchHz: 100 };
}

test('the load moves forward with a first-order lag of the pitch frequency: 63.2 % after 1 / (2 pi f)', () => {
  const zone = straightZone(NO_AIR, 60);
  const run = driveRecord(
    zone,
    recordOf({ brake: step(0.5), endS: 1 / (2 * Math.PI * 2) + 0.0001 }),
  );
  const settledN = (500 * PER_PEDAL_N * 0.45) / 2.6;
  const { step: steps, transferN } = run.end;
  expectRelative(
    transferN,
    settledN * (1 - Math.exp((-2 * Math.PI * 2 * (steps - 3000)) / 1000)),
    1e-4,
  );
});

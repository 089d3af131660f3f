import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { joinPath } from '../../src/corner/path.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';
import { bundledZone, recordOfTarget } from './bundled-zone.ts';
import { recordOf, WHOLE_RIG } from './rigs.ts';
import { BRAKES_AND_AIR, MASS_KG, NO_AIR, PER_PEDAL_N, straightZone } from './straight.ts';

const MU = 1.4;
const G = 9.80665;
/** Friction 1.4, no air, no engine: brakes alone slow it. */
const BARE: Car = { ...NO_AIR, tyres: GT_CAR.tyres };
const FULL_SCALE_N = 1000;

/** Sum of the logged acceleration from one step to another, m/s: what the speed has to have changed by. */
function integralMps({ columns: { accelXMps2 } }: LiveRun, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += accelXMps2[i]! * 0.001;
  return sum;
}

/** Newton: the integral of acceleration over any stretch is the change of speed over it. */
function expectClosed(run: LiveRun): void {
  const { speedMps } = run.columns;
  const last = speedMps.length - 1;
  const lostMps = speedMps[0]! - speedMps[last]!;
  expect(lostMps).toBeGreaterThan(5);
  for (let from = 0; from < last; from += 250) {
    const to = Math.min(last, from + 250);
    const change = speedMps[to]! - speedMps[from]!;
    expect(Math.abs(integralMps(run, from, to) - change)).toBeLessThan(1e-9 * lostMps);
  }
}

describe('the integral of the logged acceleration is the change of speed', () => {
  const eased = (t: number): number => (t < 0 ? 0 : t < 0.5 ? 0.8 : t < 0.7 ? 0.1 : 0.4);
  const antiLock = {
    front: { releaseAtUse: 1, reapplyAtUse: 0.95 },
    rear: { releaseAtUse: 1, reapplyAtUse: 0.95 },
    releasePerS: 10,
    reapplyPerS: 5,
  };
  test.each([
    { name: 'a push and a release', car: BRAKES_AND_AIR, brake: (t: number) => (t < 0 ? 0 : 0.4) },
    { name: 'wheels that lock and roll again', car: BARE, brake: eased },
    { name: 'wheels locked to a standstill', car: BARE, brake: (t: number) => (t < 0 ? 0 : 0.9) },
    {
      name: 'anti-lock at work',
      car: { ...BRAKES_AND_AIR, antiLock },
      brake: (t: number) => (t < 0 ? 0 : 0.9),
    },
  ])('over $name', ({ car, brake }) => {
    expectClosed(driveRecord(straightZone(car, 50), recordOf({ brake, endS: 6 })));
  });

  test('over a corner with bumps and downshifts', () => {
    const zone = bundledZone('gt', 'kiln-hairpin', null, { ...WHOLE_RIG, steering: false });
    expectClosed(driveRecord(zone, recordOfTarget(zone)));
  });
});

describe('the logged acceleration is that of the forces', () => {
  const decelerationAt = ({ columns }: LiveRun, timeS: number): number =>
    -columns.accelXMps2[Math.round((timeS + 3) * 1000)]!;

  // A lock-up of both axles is over by 0.8 s; from then on 400 N at the pedal slow the car by B / m and nothing else does.
  test('wheels that roll again give what the brakes ask for, not all of their grip', () => {
    const eased = (t: number): number => (t < 0 ? 0 : t < 0.5 ? 0.8 : t < 0.8 ? 0.1 : 0.25);
    const run = driveRecord(straightZone(BARE, 60), recordOf({ brake: eased, endS: 2 }));
    expect(run.end.events.filter(({ kind }) => kind === 'lock-up')).toHaveLength(2);
    expectRelative(decelerationAt(run, 1.5), (0.25 * FULL_SCALE_N * PER_PEDAL_N) / MASS_KG, 1e-6);
    expect([run.end.front.slip, run.end.rear.slip].map((slip) => slip < 1e-12)).toEqual([
      true,
      true,
    ]);
  });

  test('locked wheels slow it by the sliding friction: D = 0.8 mu g', () => {
    const wheel = { inertiaKgm2: 1.2, slidingShare: 0.8 };
    const car = { ...BARE, wheels: { front: wheel, rear: wheel }, fullScalePedalForceN: 4000 };
    const brake = (t: number): number => (t < 0 ? 0 : 1);
    const run = driveRecord(straightZone(car, 60), recordOf({ brake, endS: 2 }));
    expectRelative(decelerationAt(run, 1.5), 0.8 * MU * G, 1e-9);
  });

  // Tayal, Engineering Mechanics, ex. 15.2: a bend of 200 m from 72 to 36 km/h in 10 s: 2 m/s^2 across, 1 m/s^2 along.
  test('in a bend both accelerations are those of a steady slowing down', () => {
    const car = { ...NO_AIR, fullScalePedalForceN: (2 * MASS_KG) / PER_PEDAL_N };
    const path = joinPath([
      { kind: 'constant', lengthM: 5000, startCurvature: 1 / 200, endCurvature: 1 / 200 },
    ]);
    const brake = (t: number): number => (t < 0 ? 0 : 0.5);
    const run = driveRecord(straightZone(car, 20, { path }), recordOf({ brake, endS: 11 }));
    const { accelXMps2, accelYMps2, speedMps } = run.columns;
    expectRelative(accelYMps2[3000]!, 2, 1e-9);
    expectRelative(-accelXMps2[3000]!, 1, 1e-5);
    expectRelative(speedMps[13000]!, 10, 1e-5);
    expectRelative(accelYMps2[13000]!, 10 ** 2 / 200, 2e-5);
  });

  // J d(omega)/dt = F r - T: what the brakes took from the wheels while the tyres could not hold them, the road gives
  // back when they come up again. At a speed that hardly changes the impulse of the road is then that of the brakes.
  test('a wheel that came up again has taken as much from the road as the brakes took from it', () => {
    const loadN = 7000;
    const massKg = 1e6;
    const cgToRearM = (loadN * 2.6) / (massKg * G);
    const chassis = {
      ...GT_CAR.chassis,
      massKg,
      cgToRearM,
      cgToFrontM: 2.6 - cgToRearM,
      cgHeightM: 0,
    };
    const wheel = { inertiaKgm2: 1.2, slidingShare: 0.8 };
    const car = {
      ...BARE,
      chassis,
      brakes: { ...GT_CAR.brakes, balanceBarFront: 1 },
      wheels: { front: wheel, rear: wheel },
    };
    const perPedalN = 18747.67 / 700 / 0.58;
    const over = (1.1 * MU * loadN) / perPedalN / FULL_SCALE_N;
    const brake = (t: number): number => (t < 0 ? 0 : t < 0.06 ? over : 0.8 * over);
    const run = driveRecord(straightZone(car, 60), recordOf({ brake, endS: 0.5 }));
    const { level, speedMps } = run.columns;
    const last = speedMps.length - 1;
    let brakesNs = 0;
    for (let i = 0; i < last; i++) brakesNs += level[i]! * FULL_SCALE_N * perPedalN * 0.001;
    expect(run.end.front.slip).toBeLessThan(1e-12);
    expectRelative(massKg * (speedMps[0]! - speedMps[last]!), brakesNs, 1e-5);
  });
});

import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { joinPath } from '../../src/corner/path.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveZone } from '../../src/live/live-zone.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';
import { paddle, recordOf, WHOLE_RIG } from './rigs.ts';
import { MASS_KG, NO_AIR, STICKY, straightZone } from './straight.ts';

const G = 9.80665;
const held = (level: number) => (t: number) => (t < 0 ? 0 : level);
const ONE_STEP_S = 0.0005;

/** The car after the first step with the brake at a level. */
function firstStep(zone: LiveZone, level: number) {
  return driveRecord(zone, recordOf({ brake: held(level), endS: ONE_STEP_S })).end;
}

// 700 N make 71.2223 bar in front and 43.9454 bar behind, and 18747.67 and 5370.39 N: 250 N make 25.43654 and 15.69479 bar.
describe('hydraulics', () => {
  const slowing = (brakes: Partial<Car['brakes']>) =>
    -MASS_KG *
    firstStep(straightZone({ ...NO_AIR, brakes: { ...GT_CAR.brakes, ...brakes } }, 40), 0.25)
      .accelXMps2;

  test('nothing below push-out, less by it above', () => {
    const front = (18747.67 * (25.43654 - 5)) / 71.2223;
    const rear = (5370.39 * (15.69479 - 5)) / 43.9454;
    expectRelative(slowing({ pushOutPa: 5e5 }), front + rear, 1e-6);
  });

  test('a rear valve lets 40 % through above 10 bar', () => {
    const front = (18747.67 * 25.43654) / 71.2223;
    const rear = (5370.39 * (10 + 0.4 * (15.69479 - 10))) / 43.9454;
    expectRelative(slowing({ rearValve: { kneePa: 1e6, slope: 0.4 } }), front + rear, 1e-6);
  });
});

// Friction 1.6 at 3000 N, a tenth less at 6000 N: front wheels with 1250 g 1.25 / 2.6 / 2 each.
test('friction falls with load', () => {
  const tyre = {
    longitudinalFriction: 1.6,
    lateralFriction: 1.6,
    referenceLoadN: 3000,
    loadSensitivity: -0.1,
  };
  const zone = straightZone({ ...NO_AIR, tyres: { front: tyre, rear: tyre } }, 40);
  const wheelN = (MASS_KG * G * 1.25) / 2.6 / 2;
  const friction = 1.6 * (1 - (0.1 * (wheelN - 3000)) / 3000);
  const along = (0.25 / 0.7) * 18747.67;
  expectRelative(firstStep(zone, 0.25).front.use, along / (friction * 2 * wheelN), 1e-6);
});

describe('what slows beside the brakes', () => {
  const bare = firstStep(straightZone(NO_AIR, 40), 0.25);

  test('a hybrid’s motor takes the rear axle', () => {
    const electric = { torqueNm: 900, powerW: 1e6, fadeFromMps: 20, fadeOutMps: 10 };
    const end = firstStep(straightZone({ ...NO_AIR, electric }, 40), 0.25);
    expectRelative((bare.accelXMps2 - end.accelXMps2) * MASS_KG, 900 / 0.33, 1e-6);
    expect(end.front.use).toBe(bare.front.use);
    expect(end.rear.use).toBeGreaterThan(bare.rear.use);
  });

  test('the engine takes the driven axle', () => {
    const engine = { ...NO_AIR.engine, brakingTorque: [{ rpm: 1000, torqueNm: 60 }] };
    const driven = (frontDriveShare: number) =>
      firstStep(straightZone({ ...NO_AIR, engine, frontDriveShare }, 40), 0.25);
    expect(driven(0).front.use).toBe(bare.front.use);
    expect(driven(1).rear.use).toBe(bare.rear.use);
    // Friction 3, 60 N m in top gear, 0.8 on 3.4.
    const frontLoadN = (MASS_KG * G * 1.25) / 2.6;
    const gained = (60 * 0.8 * 3.4) / 0.33 / (3 * frontLoadN);
    expect(driven(1).front.use - bare.front.use).toBeCloseTo(gained, 9);
  });

  test('during an upshift the engine does nothing, after it the higher gear does', () => {
    const engine = { ...NO_AIR.engine, brakingTorque: [{ rpm: 1000, torqueNm: 60 }] };
    const gears = { approach: 4, slowest: 4, shiftsAtM: null };
    const zone = {
      ...straightZone({ ...NO_AIR, engine }, 40, { gears }),
      controls: { ...WHOLE_RIG, throttle: false, steering: false },
    };
    const slowingAt = (endS: number) => {
      const buttons = [paddle(0.2, 'upshift')];
      return -driveRecord(zone, recordOf({ brake: held(0.25), buttons, endS })).end.accelXMps2;
    };
    const perRatio = (60 * 3.4) / 0.33 / MASS_KG;
    expectRelative(slowingAt(0.15) - slowingAt(0.25), 1.15 * perRatio, 1e-6);
    expectRelative(slowingAt(0.35) - slowingAt(0.25), 0.95 * perRatio, 1e-6);
  });
});

describe('an arc of 100 m', () => {
  const path = joinPath([
    { kind: 'constant', lengthM: 5000, startCurvature: 0.01, endCurvature: 0.01 },
  ]);

  test('with a bank of 8 %: it carries part of the lateral force and presses the car down', () => {
    const zone = straightZone({ ...NO_AIR, tyres: GT_CAR.tyres }, 30, { path, bankAt: () => 0.08 });
    const { end } = driveRecord(zone, recordOf({ brake: () => 0, endS: 0 }));
    const across = 900 * 0.01 - G * 0.08;
    expectRelative(end.front.use, across / (1.4 * (G + 0.08 * 900 * 0.01)), 1e-9);
    // The car is symmetric enough for both axles to have the same part of load and lateral force.
    expectRelative(end.rear.use, end.front.use, 1e-9);
    expectRelative(end.accelYMps2, 9, 1e-12);
  });

  test('the rail’s steering: wheelbase and understeer over the radius, times the steering ratio', () => {
    const zone = straightZone({ ...NO_AIR, understeerRadpMps2: 0.0008 }, 30, { path });
    const { columns } = driveRecord(zone, recordOf({ brake: () => 0, endS: -2.9 }));
    expectRelative(columns.steeringRad[0] ?? 0, 14 * (0.026 + 0.0008 * 9), 1e-9);
  });

  test('load moved across costs grip where friction falls with load', () => {
    const front = { ...GT_CAR.tyres.front, loadSensitivity: -0.1, referenceLoadN: 3000 };
    const zone = straightZone({ ...NO_AIR, tyres: { front, rear: front } }, 30, { path });
    const { end } = driveRecord(zone, recordOf({ brake: () => 0, endS: 0 }));
    // 0.45 m high over 1.6 m of track: the outer wheel gains what the inner one loses.
    const wheelN = (MASS_KG * G * 1.25) / 2.6 / 2;
    const lateralN = (MASS_KG * 9 * 1.25) / 2.6;
    const moved = (lateralN * 0.45) / 1.6;
    const grip = (load: number) => load * 1.4 * (1 - (0.1 * (load - 3000)) / 3000);
    expectRelative(end.front.use, lateralN / (grip(wheelN + moved) + grip(wheelN - moved)), 1e-9);
  });

  // The tyres carry 13.715 of their 13.729 m/s^2 across: 400 N are left along, and the engine in third gear brakes by 900.
  test('a rig without a throttle: off the brake the program takes out what the tyres do not carry', () => {
    const car = { ...NO_AIR, engine: GT_CAR.engine, tyres: GT_CAR.tyres };
    const brake = (t: number) => (t < 0 || t > 0.002 ? 0 : 0.016);
    const end = (throttle: boolean) => {
      const gears = { approach: 3, slowest: 3, shiftsAtM: null };
      const zone = straightZone(car, 37.034, { path, gears });
      const controls = { ...zone.controls, throttle };
      const record = recordOf({ brake, throttle: () => 0, endS: 0.04 });
      return driveRecord({ ...zone, controls }, record).end;
    };
    // What three milliseconds of brake have left, and no more.
    expect(end(false).rear.slip).toBeLessThan(0.002);
    expect(end(true).rear.slip).toBeGreaterThan(3 * end(false).rear.slip);
    expect(end(false).speedMps).toBeGreaterThan(end(true).speedMps);
  });
});

describe('the brake takes hold', () => {
  const brakedFrom = (brake: (t: number) => number, endS = 0.5) =>
    driveRecord(straightZone(STICKY, 40), recordOf({ brake, endS })).end.brakedFromM;

  test('above 1.5 % over the level with which the car began to roll', () => {
    expect(brakedFrom(() => 0.02)).toBeNull();
    expect(brakedFrom((t) => (t < 0.1 ? 0.02 : 0.034))).toBeNull();
    expect(brakedFrom((t) => (t < 0.1 ? 0.02 : 0.036))).toBeCloseTo(4, 6);
    expect(brakedFrom((t) => (t < -1 ? 0 : 0.016))).toBeCloseTo(-40, 6);
  });

  test('a foot that is on the brake already is no rest', () => {
    expect(brakedFrom(() => 0.5)).toBeCloseTo(-120, 6);
  });

  test('until then the car goes on at its approach speed', () => {
    const run = driveRecord(straightZone(STICKY, 40), recordOf({ brake: held(0.014), endS: 1 }));
    expect(new Set(run.columns.speedMps)).toEqual(new Set([40]));
    expectRelative(run.columns.placeM.at(-1) ?? 0, 40 * (run.columns.timeS.at(-1) ?? 0), 1e-9);
    expect(run.end.workJ).toEqual({ front: 0, rear: 0 });
  });
});

test('the car stops and stays', () => {
  const run = driveRecord(straightZone(NO_AIR, 10), recordOf({ brake: held(0.5), endS: 3 }));
  expect(run.end.speedMps).toBe(0);
  expect(Math.min(...run.columns.speedMps)).toBe(0);
});

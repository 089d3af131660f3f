import { expect, test } from 'vitest';
import type { Car } from '../../../src/car/car.ts';
import { twoAxleModel } from '../../../src/corner/two-axle.ts';
import { solveZone } from '../../../src/target/derive/derive-zone.ts';
import { engineBrakingInGearN, twoAxleCar } from '../../../src/target/derive/zone-model.ts';
import { expectRelative } from '../../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../../reference/gt-car.ts';

/** Each of these fails when its part of the physics is switched off. */
const G = 9.80665;

test('bank: v^2 = g R (tan + mu) / (1 - mu tan), the textbook speed of a banked corner', () => {
  const car: Car = { ...GT_CAR, aero: { ...GT_CAR.aero, downforceAreaM2: 0 } };
  const limit = (bank: number): number =>
    twoAxleModel(twoAxleCar(car, 1), {
      curvatureAt: () => 1 / 50,
      slopeAt: () => 0,
      bankAt: () => bank,
    }).cornerLimit(0);
  for (const bank of [-0.1, 0, 0.05, 0.2])
    expectRelative(limit(bank), (G * 50 * (bank + 1.4)) / (1 - 1.4 * bank), 1e-9);
});

test('motor: 600 N m over a wheel of 0.33 m beside the engine, capped by 60 kW at speed', () => {
  const electric = { torqueNm: 600, powerW: 60_000, fadeFromMps: 10, fadeOutMps: 5 };
  const extra = (speedMps: number): number =>
    engineBrakingInGearN({ ...GT_CAR, electric }, 4, speedMps) -
    engineBrakingInGearN(GT_CAR, 4, speedMps);
  expectRelative(extra(20), 600 / 0.33, 1e-9);
  expectRelative(extra(50), 60_000 / 50, 1e-9);
  expect(extra(4)).toBe(0);
});

test('understeer: each m/s^2 across asks for 0.01 rad more at the road, 0.14 rad at the wheel', () => {
  const [plain, more] = [0, 0.01].map(
    (understeerRadpMps2) =>
      solveZone({ ...GT_CAR, understeerRadpMps2 }, SMOOTH_CORNER).points.at(-1) as {
        readonly steeringRad: number;
        readonly accelYMps2: number;
      },
  );
  // Wheelbase over radius times the steering ratio of 14.
  expectRelative(plain?.steeringRad ?? 0, (14 * 2.6) / 50, 1e-6);
  const extra = (more?.steeringRad ?? 0) - (plain?.steeringRad ?? 0);
  expectRelative(extra, 0.14 * (more?.accelYMps2 ?? 0), 1e-6);
});

test('a downshift without a blip uses more of the rear axle than one with it', () => {
  const rearUse = (blip: boolean): number =>
    solveZone(
      { ...GT_CAR, gearbox: { ...GT_CAR.gearbox, blip } },
      { ...SMOOTH_CORNER, gears: { approach: 4, slowest: 3, shiftsAtM: [-10] } },
    ).downshifts[0]?.rearUse ?? 0;
  expect(rearUse(false)).toBeGreaterThan(rearUse(true) + 0.1);
});

test('rotating parts: 1.05 times the kinetic energy goes into the pads and the air', () => {
  const car: Car = {
    ...GT_CAR,
    rotatingShare: 0.05,
    engine: { ...GT_CAR.engine, brakingTorque: [{ rpm: 0, torqueNm: 0 }] },
  };
  const { points } = solveZone(car, { ...SMOOTH_CORNER, approachSpeedMps: 75 });
  const peak = points.findIndex(({ limiter }) => limiter === 'front axle');
  const end = points.findIndex(({ sM }) => sM > -2);
  // Straight braking between them: force of both axles from the front pressure, 4 mu p A r / r_w by axle.
  const area = (...mm: number[]): number =>
    mm.reduce((sum, d) => sum + (Math.PI * (d / 1000) ** 2) / 4, 0);
  const forceN = (front: number, rear: number): number =>
    (4 * 0.5 * (front * area(30, 34, 38) * 0.158 + rear * area(28, 32) * 0.142)) / 0.33;
  let work = 0;
  for (let i = peak + 1; i <= end; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a === undefined || b === undefined) throw new Error('points');
    const at = (p: typeof a): number =>
      forceN(p.pressureFrontPa, p.pressureRearPa) + 0.6 * p.speedMps ** 2;
    work += ((at(a) + at(b)) * (b.sM - a.sM)) / 2;
  }
  const lost = (points[peak]?.speedMps ?? 0) ** 2 - (points[end]?.speedMps ?? 0) ** 2;
  expectRelative(work, 0.5 * 1250 * 1.05 * lost, 1e-4);
});

test('rear valve: the front pressure of the target brakes the front axle to its limit and not beyond', () => {
  const car: Car = {
    ...GT_CAR,
    brakes: { ...GT_CAR.brakes, rearValve: { kneePa: 20e5, slope: 0.4 } },
    engine: { ...GT_CAR.engine, brakingTorque: [{ rpm: 0, torqueNm: 0 }] },
  };
  const { points } = solveZone(car, { ...SMOOTH_CORNER, approachSpeedMps: 75 });
  const straight = points.filter(({ limiter, sM }) => limiter === 'front axle' && sM < -1);
  expect(straight.length).toBeGreaterThan(20);
  for (const { pressureFrontPa, pressureRearPa, speedMps } of straight) {
    const frontN = (18747.67 * pressureFrontPa) / 71.2223e5;
    const rearN = (5370.39 * pressureRearPa) / 43.9454e5;
    const load = (1250 * G * 1.25 + (frontN + rearN) * 0.45) / 2.6 + 1.8 * 0.42 * speedMps ** 2;
    expectRelative(frontN, 1.4 * load, 2e-5);
    expectRelative(
      pressureRearPa,
      20e5 + 0.4 * ((pressureFrontPa * 43.9454) / 71.2223 - 20e5),
      1e-5,
    );
  }
});

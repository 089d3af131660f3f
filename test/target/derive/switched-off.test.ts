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

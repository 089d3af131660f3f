import { test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import type { CarFile } from '../../../src/car/car-file.ts';
import { JUST_ON_N } from '../../../src/corner/braking-model.ts';
import { zoneModel, zoneSetting } from '../../../src/target/derive/zone-model.ts';
import { expectRelative } from '../../close-to.ts';
import { SMOOTH_CORNER } from '../../reference/gt-car.ts';
import { CARS } from './bundled-zones.ts';

// 1100 N m at 0.34 m, less than 200 kW at 40 m/s, on 950 kg; it fades below 110 km/h.
test('a hybrid’s motor comes with the brake and goes with it', () => {
  const file = CARS.find(({ id }) => id === 'prototype') as CarFile;
  const car = buildCar(file, undefined);
  const schedule = [{ fromM: Number.NEGATIVE_INFINITY, gear: 4 }];
  const model = zoneModel('two-axle', zoneSetting(car, SMOOTH_CORNER), schedule);
  const slowing = (brakeForceN: number): number =>
    model.decelerationMps2(-50, 40 ** 2, brakeForceN);
  expectRelative(slowing(JUST_ON_N) - slowing(0), 1100 / 0.34 / car.chassis.massKg, 1e-9);
  expectRelative(slowing(950) - slowing(JUST_ON_N), 950 / car.chassis.massKg, 1e-9);
});

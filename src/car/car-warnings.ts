import { buildCar } from './build-car.ts';
import type { CarFile } from './car-file.ts';
import { limitsOverSpeed, topSpeedMps } from './car-limits.ts';
import { straightLimit } from './straight-limit.ts';

const STEPS = 12;

/** What a car file may say and hardly means. */
export function carWarnings(file: CarFile): readonly string[] {
  const car = buildCar(file);
  const neededN = straightLimit(car, topSpeedMps(car)).pedalForceN;
  const rearFirst = limitsOverSpeed(car, STEPS).some(({ locksFirst }) => locksFirst === 'rear');
  const newtons = neededN.toFixed(0);
  return [
    ...(rearFirst ? ['The rear axle locks first on the straight: the car would spin.'] : []),
    ...(neededN > car.driver.peakPedalForceN
      ? [`The limit at top speed takes ${newtons} N, more than driver.peak_pedal_force_n.`]
      : []),
    ...(neededN > car.fullScalePedalForceN
      ? [`The limit at top speed takes ${newtons} N, more than full_scale_pedal_force_n.`]
      : []),
  ];
}

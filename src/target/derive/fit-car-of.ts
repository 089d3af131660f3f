import type { Car } from '../../car/car.ts';
import { wheelbaseM } from '../../car/chassis.ts';
import { overRevSpeedMps } from '../../car/gearbox.ts';
import { cornerLimitSquared } from '../../corner/corner-limit.ts';
import type { FitCar } from '../../corner/fit/fit-car.ts';
import { type Road, twoAxleModel } from '../../corner/two-axle.ts';
import { engineBrakingInGearN, twoAxleCar } from './zone-model.ts';

const HALVINGS = 50;
const [SMALLEST_M, LARGEST_M] = [2, 2000];
const STRAIGHT: Road = { curvatureAt: () => 0, slopeAt: () => 0, bankAt: () => 0 };

/** What a car adds to a logged zone, by the model of the derivation. */
export function fitCarOf(car: Car): FitCar {
  const axles = twoAxleCar(car, 1);
  return {
    name: car.name,
    decelerationMps2: (speedMps, gear) =>
      twoAxleModel(axles, STRAIGHT, (_, w) => engineBrakingInGearN(car, gear, Math.sqrt(w))).limit(
        0,
        speedMps ** 2,
      ).decelerationMps2,
    radiusM: (speedMps, gripShare) => radiusAtLimitM(car, speedMps, gripShare),
    steeringPerCurvature: (speedMps) =>
      car.steeringRatio * (wheelbaseM(car.chassis) + car.understeerRadpMps2 * speedMps ** 2),
    lowestGear: (speedMps) => {
      const { ratios } = car.gearbox;
      const gear = ratios.findIndex(
        (_, i) => i >= 1 && overRevSpeedMps(car.gearbox, i + 1) >= speedMps,
      );
      return gear < 0 ? ratios.length : gear + 1;
    },
    gears: car.gearbox.ratios.length,
  };
}

/** The radius whose limit is the speed, by halving: a larger radius is always faster. */
function radiusAtLimitM(car: Car, speedMps: number, gripShare: number): number {
  const axles = twoAxleCar(car, gripShare);
  const carries = (radiusM: number): boolean =>
    cornerLimitSquared(axles, { ...STRAIGHT, curvatureAt: () => 1 / radiusM }, 0) >= speedMps ** 2;
  let [low, high] = [SMALLEST_M, LARGEST_M];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (carries(middle)) high = middle;
    else low = middle;
  }
  return high;
}

import { brakeForcesN } from '../../car/brake-force.ts';
import type { Car } from '../../car/car.ts';
import { type BrakingLimit, type BrakingModel, JUST_ON_N } from '../../corner/braking-model.ts';

/**
 * A model whose brakes give no more than the pedal does at full scale, whatever the grip would take: from there on the way
 * gets longer. Of the force of the discs the turning parts take their share, as in `atTheDiscsN`.
 */
export function upToFullScale(model: BrakingModel, car: Car): BrakingModel {
  const { front, rear } = brakeForcesN(car.brakes, car.fullScalePedalForceN);
  const { rotatingShare: k, chassis } = car;
  const mostN = (sM: number, w: number): number =>
    Math.max(
      0,
      (front + rear - k * chassis.massKg * model.decelerationMps2(sM, w, JUST_ON_N)) / (1 + k),
    );
  return {
    ...model,
    limit: (sM, w): BrakingLimit => {
      const limit = model.limit(sM, w);
      const most = mostN(sM, w);
      if (limit.brakeForceN <= most) return limit;
      return {
        brakeForceN: most,
        decelerationMps2: model.decelerationMps2(sM, w, most),
        limiter: 'foot',
      };
    },
  };
}

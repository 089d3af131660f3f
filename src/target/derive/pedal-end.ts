import { brakeForcesN } from '../../car/brake-force.ts';
import type { Car } from '../../car/car.ts';
import type { BrakingLimit, BrakingModel } from '../../corner/braking-model.ts';

/**
 * A model whose brakes give no more than the pedal does at full scale, whatever the grip would take: from there on the way
 * gets longer. Of the force of the discs the turning parts take their share, as in `atTheDiscsN`.
 */
export function upToFullScale(model: BrakingModel, car: Car): BrakingModel {
  const { front, rear } = brakeForcesN(car.brakes, car.fullScalePedalForceN);
  const { rotatingShare: k, chassis } = car;
  const fullScaleN = ({ brakeForceN, decelerationMps2 }: BrakingLimit): number => {
    const othersN = chassis.massKg * decelerationMps2 - brakeForceN;
    return Math.max(0, (front + rear - k * othersN) / (1 + k));
  };
  return {
    ...model,
    limit: (sM, w, mostN): BrakingLimit => {
      const limit = model.limit(sM, w, mostN);
      const fullN = fullScaleN(limit);
      return limit.brakeForceN <= fullN ? limit : model.limit(sM, w, fullN);
    },
  };
}

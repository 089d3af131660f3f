import { pedalForceN } from '../../car/brakes.ts';
import type { Car } from '../../car/car.ts';
import { pascalsFromBar } from '../../units.ts';
import type { Target } from '../target.ts';

/** Pedal force that level 1 of a target stands for in a car, N: what its file says, or else what the car's file says. */
export function fullScaleForceN(
  { fullScale }: Pick<Target, 'fullScale'>,
  { brakes, fullScalePedalForceN }: Pick<Car, 'brakes' | 'fullScalePedalForceN'>,
): number {
  if (fullScale.pedalForceN !== null) return fullScale.pedalForceN;
  if (fullScale.pressureBar === null) return fullScalePedalForceN;
  return pedalForceN(brakes, pascalsFromBar(fullScale.pressureBar));
}

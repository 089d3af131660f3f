import type { PadCurve } from './car.ts';
import type { Disc } from './disc-heat.ts';
import { atTemperature } from './over-temperature.ts';

/**
 * Temperature where pad and disc touch, C: the mean of both, weighted as the heat divides between them. Two bodies in
 * contact meet at the temperature weighted by their effusivities, and frictional heat divides in the same ratio.
 *
 * @source Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., sections 2.9 and 2.15
 */
export function contactC(disc: Pick<Disc, 'heatShare'>, discC: number, padC: number): number {
  return disc.heatShare * discC + (1 - disc.heatShare) * padC;
}

/** Pad friction at a contact temperature: monotone cubic through the file's points, constant outside them. */
export function padFrictionAt(curve: PadCurve, temperatureC: number): number {
  return atTemperature(
    curve.map(({ discC, friction }) => ({ atC: discC, value: friction })),
    temperatureC,
  );
}

import type { Car } from './car.ts';
import { overRevSpeedMps } from './gearbox.ts';
import { type StraightLimit, straightLimit } from './straight-limit.ts';

/** Speed at the rev limit in the highest gear, m/s. */
export function topSpeedMps({ gearbox }: Car): number {
  return overRevSpeedMps(gearbox, gearbox.ratios.length);
}

/** The straight-line limit at even steps of speed up to the top speed, slowest first. */
export function limitsOverSpeed(car: Car, count: number): StraightLimit[] {
  const top = topSpeedMps(car);
  return Array.from({ length: count }, (_, i) => straightLimit(car, (top * (i + 1)) / count));
}

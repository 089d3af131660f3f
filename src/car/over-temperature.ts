import { monotoneCubic } from '../curve/monotone-cubic.ts';

/** A value against a temperature in degrees Celsius, rising temperatures. */
type TemperatureCurve = readonly { readonly atC: number; readonly value: number }[];

/**
 * The value at a temperature, on a monotone cubic through the points and constant outside them; one point alone is a
 * constant.
 * @param curve one point or more
 */
export function atTemperature(curve: TemperatureCurve, temperatureC: number): number {
  const [first, ...others] = curve;
  if (others.length === 0) return (first as { value: number }).value;
  return monotoneCubic(curve.map(({ atC, value }) => ({ x: atC, y: value })))(temperatureC);
}

import type { LiveMeasures } from '../../score/live-measures.ts';
import { distanceText, speedText, type TextUnits } from '../../unit-text.ts';

/** How far from the target's brake point, for example `3.2 m late`. */
export function brakePointText(
  { brakePointErrorM }: LiveMeasures,
  units: TextUnits = 'metric',
): string {
  const distance = distanceText(Math.abs(brakePointErrorM), units);
  if (Number.parseFloat(distance) === 0) return 'on the mark';
  return `${distance} ${brakePointErrorM > 0 ? 'late' : 'early'}`;
}

/** Slowest speed minus the target's, for example `+4 km/h`. */
export function slowestText(
  { slowestSpeedErrorMps }: LiveMeasures,
  units: TextUnits = 'metric',
): string {
  const text = speedText(slowestSpeedErrorMps, units);
  return slowestSpeedErrorMps > 0 && !text.startsWith('0 ') ? `+${text}` : text;
}

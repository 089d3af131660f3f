import { fixed } from '../../number-text.ts';
import type { LiveMeasures } from '../../score/live-measures.ts';
import { speedText, type TextUnits } from '../../unit-text.ts';

/** How far from the target's brake point, for example `3.2 m late`. */
export function brakePointText({ brakePointErrorM }: LiveMeasures): string {
  const metres = fixed(Math.abs(brakePointErrorM), 1);
  if (metres === '0.0') return 'on the mark';
  return `${metres} m ${brakePointErrorM > 0 ? 'late' : 'early'}`;
}

/** Slowest speed minus the target's, for example `+4 km/h`. */
export function slowestText(
  { slowestSpeedErrorMps }: LiveMeasures,
  units: TextUnits = 'metric',
): string {
  const text = speedText(slowestSpeedErrorMps, units);
  return slowestSpeedErrorMps > 0 && !text.startsWith('0 ') ? `+${text}` : text;
}

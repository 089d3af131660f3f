import { fixed } from '../number-text.ts';
import { feetFromMetres, kmhFromMetresPerSecond, mphFromMetresPerSecond } from '../units.ts';
import type { CommandContext } from './command.ts';

type Units = CommandContext['units'];

/** A distance with its unit; decimals are those of metres, feet are whole. */
export function distanceText(metres: number, units: Units, decimals: number): string {
  const imperial = units === 'imperial';
  return imperial ? `${fixed(feetFromMetres(metres), 0)} ft` : `${fixed(metres, decimals)} m`;
}

/** A whole speed with its unit. */
export function speedText(mps: number, units: Units): string {
  return units === 'imperial'
    ? `${mphFromMetresPerSecond(mps).toFixed(0)} mph`
    : `${kmhFromMetresPerSecond(mps).toFixed(0)} km/h`;
}

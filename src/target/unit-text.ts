import { fixed } from '../number-text.ts';
import {
  barFromPascals,
  feetFromMetres,
  kmhFromMetresPerSecond,
  lbfFromNewtons,
  mphFromMetresPerSecond,
  psiFromPascals,
} from '../units.ts';

export type TextUnits = 'metric' | 'imperial';

export function distanceText(metres: number, units: TextUnits): string {
  return units === 'metric' ? `${fixed(metres, 1)} m` : `${fixed(feetFromMetres(metres), 0)} ft`;
}

export function speedText(mps: number, units: TextUnits): string {
  return units === 'metric'
    ? `${fixed(kmhFromMetresPerSecond(mps), 0)} km/h`
    : `${fixed(mphFromMetresPerSecond(mps), 0)} mph`;
}

export function forceText(newtons: number, units: TextUnits): string {
  return units === 'metric' ? `${fixed(newtons, 0)} N` : `${fixed(lbfFromNewtons(newtons), 0)} lbf`;
}

export function pressureText(pascals: number, units: TextUnits): string {
  return units === 'metric'
    ? `${fixed(barFromPascals(pascals), 1)} bar`
    : `${fixed(psiFromPascals(pascals), 0)} psi`;
}

import { fixed, signed } from './number-text.ts';
import {
  barFromPascals,
  feetFromMetres,
  kmhFromMetresPerSecond,
  lbfFromNewtons,
  mphFromMetresPerSecond,
  psiFromPascals,
  STANDARD_GRAVITY_MPS2,
} from './units.ts';

/** What numbers with a unit are told in. */
export type TextUnits = 'metric' | 'imperial';

/** Decimals are those of metres; feet are whole. */
export function distanceText(metres: number, units: TextUnits, decimals = 1): string {
  return units === 'metric'
    ? `${fixed(metres, decimals)} m`
    : `${fixed(feetFromMetres(metres), 0)} ft`;
}

/** The same with a plus in front of what is more than nothing. */
export function signedDistanceText(metres: number, units: TextUnits, decimals = 1): string {
  return units === 'metric'
    ? `${signed(metres, decimals)} m`
    : `${signed(feetFromMetres(metres), 0)} ft`;
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

export function massText(kg: number, units: TextUnits): string {
  // A pound of force is what a pound weighs under standard gravity.
  return units === 'metric'
    ? `${fixed(kg, 0)} kg`
    : `${fixed(lbfFromNewtons(kg * STANDARD_GRAVITY_MPS2), 0)} lb`;
}

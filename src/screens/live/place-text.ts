import { distanceText, signedDistanceText, type TextUnits } from '../../unit-text.ts';

/** A place along the road as boards count it: `62 m` before turn-in, `+5 m` after it. */
export function placeText(sM: number, units: TextUnits = 'metric'): string {
  return sM > 0 ? signedDistanceText(sM, units, 0) : distanceText(-sM, units, 0);
}

/** Where the car is, in words. */
export function whereText(placeM: number, units: TextUnits = 'metric'): string {
  const distance = distanceText(Math.abs(placeM), units, 0);
  return placeM > 0 ? `${distance} past turn-in` : `${distance} to turn-in`;
}

import { fixed } from '../../number-text.ts';

/** A place along the road as boards count it: `62 m` before turn-in, `+5 m` after it. */
export function placeText(sM: number): string {
  const metres = fixed(Math.abs(sM), 0);
  return sM > 0 && metres !== '0' ? `+${metres} m` : `${metres} m`;
}

/** Where the car is, in words. */
export function whereText(placeM: number): string {
  const metres = fixed(Math.abs(placeM), 0);
  return placeM > 0 ? `${metres} m past turn-in` : `${metres} m to turn-in`;
}

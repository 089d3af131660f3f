import { distanceText, type TextUnits } from '../../unit-text.ts';

/** A place along the path from turn-in as a driver says it. */
export function placeText(sM: number, units: TextUnits): string {
  if (Math.abs(sM) < 0.05) return 'at turn-in';
  return `${distanceText(Math.abs(sM), units)} ${sM < 0 ? 'before' : 'after'} turn-in`;
}

import { percentText } from '../../number-text.ts';
import type { Downshift } from './downshifts.ts';

/** What a downshift leaves the rear axle, and by how much the brake has to be eased for it. */
export function shiftMarginText({ rearUse, ease }: Pick<Downshift, 'rearUse' | 'ease'>): string {
  const margin = `rear margin ${percentText(1 - rearUse)}`;
  return ease > 0 ? `${margin} with the brake eased by ${percentText(ease)}` : margin;
}

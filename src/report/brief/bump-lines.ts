import { percentText } from '../../number-text.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import type { TextUnits } from '../../unit-text.ts';
import { placeText } from './place-text.ts';

/** The bumps between brake point and slowest point, and what they leave the rear axle. */
export function bumpLines({ bumps }: DerivedTarget, units: TextUnits): readonly string[] {
  return bumps.map(({ bump, rearUse, ease }) => {
    const margin = Number.isFinite(rearUse) ? percentText(1 - rearUse) : 'none';
    const advice = ease > 0 ? `, ease ${percentText(ease)} over it` : '';
    return `${placeText(bump.atM, units)}: rear margin ${margin}${advice}`;
  });
}

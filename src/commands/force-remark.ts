import type { RigInNewtons } from '../input/rig/rig-in-newtons.ts';
import { forceText, type TextUnits } from '../unit-text.ts';

/** What a driver has to know of the force behind the levels; null where they are shares of the own full scale anyway. */
export function forceRemark(counts: RigInNewtons['counts'], units: TextUnits): string | null {
  if (counts.in === 'newtons')
    return `100 % is ${forceText(counts.fullScaleN, units)} at the pedal, as in the car.`;
  if (!('askedN' in counts)) return null;
  const [asked, own] = [forceText(counts.askedN, units), forceText(counts.ownN, units)];
  return `The car takes ${asked}, your full scale is ${own}: levels are shares of yours.`;
}

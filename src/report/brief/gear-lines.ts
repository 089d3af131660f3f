import { fixed } from '../../number-text.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import type { Downshift } from '../../target/derive/downshifts.ts';
import { shiftMarginText } from '../../target/derive/shift-margin-text.ts';
import type { TextUnits } from '../../unit-text.ts';
import { placeText } from './place-text.ts';

/** The gears of one variant and where its last downshift goes. */
export function gearLine({ corner, zone }: DerivedTarget, units: TextUnits): string {
  const { approach } = corner.gears;
  const last = zone.downshifts.at(-1);
  if (last === undefined) return `${corner.variant}: stay in gear ${approach}, no downshift`;
  return `${corner.variant}: gear ${approach} to ${last.toGear}; ${lastDownshift(last, units)}`;
}

function lastDownshift(shift: Downshift, units: TextUnits): string {
  const { fromGear, toGear, atM, earliestM, rpm, safe } = shift;
  const where = `last downshift ${fromGear} to ${toGear}, ${placeText(atM, units)},`;
  if (safe) return `${where} ${fixed(rpm, 0)} rpm, ${shiftMarginText(shift)}`;
  const instead =
    earliestM === null ? 'no place is safe' : `safe from ${placeText(earliestM, units)}`;
  return `${where} is NOT safe by the model (${fixed(rpm, 0)} rpm): ${instead}`;
}

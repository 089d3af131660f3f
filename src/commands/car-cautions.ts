import { buildCar } from '../car/build-car.ts';
import type { CarFile } from '../car/car-file.ts';
import { overRevSpeedMps } from '../car/gearbox.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';

/** What a car cannot do on a sheet and is drilled all the same; `target derive` says it with its numbers. */
export function carCautions(file: CarFile, sheet: CornerSheet, variant: string): readonly string[] {
  const { gearbox } = buildCar(file, variantOfSheet(sheet, variant).car);
  const { gears, approachSpeedMps } = buildCorner(sheet, variant);
  const isThere = gears.approach <= gearbox.ratios.length;
  if (isThere && approachSpeedMps <= overRevSpeedMps(gearbox, gears.approach)) return [];
  const lacks = isThere
    ? `${file.name} is over its rev limit in gear ${gears.approach} at this approach speed`
    : `${file.name} has no gear ${gears.approach}, which the approach asks for`;
  return [`Caution: ${lacks}: \`ebbline target derive\` says more.`];
}

import { readdirSync, readFileSync } from 'node:fs';
import { buildCar } from '../../../src/car/build-car.ts';
import type { CarFile } from '../../../src/car/car-file.ts';
import { buildCorner } from '../../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../../src/corner/corner-sheet.ts';
import { readCornerSheet } from '../../../src/corner/read-corner-sheet.ts';
import { type DerivedTarget, deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { readCar } from '../../profile/read-sound.ts';

function filesOf(folder: string): { readonly name: string; readonly text: string }[] {
  const url = new URL(`../../../profiles/${folder}/`, import.meta.url);
  return readdirSync(url).map((name) => ({ name, text: readFileSync(new URL(name, url), 'utf8') }));
}

export const CARS: readonly CarFile[] = filesOf('cars').map(({ name, text }) =>
  readCar(text, name),
);
export const SHEETS: readonly CornerSheet[] = filesOf('corners').map(({ name, text }) =>
  readCornerSheet(text, name),
);

/** Every bundled car in every variant of a bundled corner; null where it needs no brake. */
export function derivedIn(sheet: CornerSheet, car: CarFile): (DerivedTarget | null)[] {
  return sheet.variants.map((variant) => {
    try {
      return deriveTarget(buildCar(car, variant.car), buildCorner(sheet, variant.name));
    } catch {
      return null;
    }
  });
}

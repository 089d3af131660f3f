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

const known = new Map<string, readonly (DerivedTarget | null)[]>();

/** Every bundled car in every variant of a bundled corner; null where it needs no brake. Derived once for all who ask. */
export function derivedIn(sheet: CornerSheet, car: CarFile): readonly (DerivedTarget | null)[] {
  const key = `${car.id}/${sheet.id}`;
  const derived = known.get(key) ?? sheet.variants.map((variant) => derivedOf(sheet, car, variant));
  known.set(key, derived);
  return derived;
}

function derivedOf(
  sheet: CornerSheet,
  file: CarFile,
  { name, car }: CornerSheet['variants'][number],
): DerivedTarget | null {
  try {
    return deriveTarget(buildCar(file, car), buildCorner(sheet, name));
  } catch {
    return null;
  }
}

/** The same on a smooth road and without anti-lock, which move no target: of every variant, or it throws. */
export function derivedOnSmoothRoad(sheet: CornerSheet, file: CarFile): readonly DerivedTarget[] {
  return derivedIn(sheet, file).map((derived) => {
    if (derived === null) throw new Error(`${file.id} needs no brake in ${sheet.id}`);
    const car = { ...derived.car, antiLock: null };
    return { ...derived, car, corner: { ...derived.corner, bumps: [] }, bumps: [] };
  });
}

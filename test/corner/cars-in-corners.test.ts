import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { buildCar } from '../../src/car/build-car.ts';
import type { CarFile } from '../../src/car/car-file.ts';
import { buildCorner } from '../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { readCornerSheet } from '../../src/corner/read-corner-sheet.ts';
import { solveZone } from '../../src/target/derive/derive-zone.ts';
import { readCar } from '../profile/read-sound.ts';

const PROFILES = new URL('../../profiles/', import.meta.url);

function all<T>(folder: string, read: (text: string, file: string) => T): T[] {
  const url = new URL(`${folder}/`, PROFILES);
  return readdirSync(url).map((file) => read(readFileSync(new URL(file, url), 'utf8'), file));
}

const cars: readonly CarFile[] = all('cars', readCar);
const sheets: readonly CornerSheet[] = all('corners', readCornerSheet);

test.each(cars)('$id knows what every variant asks of a car', (file) => {
  for (const { variants } of sheets)
    for (const { car: overrides } of variants) {
      const car = buildCar(file, overrides);
      expect(car.chassis.massKg).toBeGreaterThan(0);
    }
});

test.each(cars)('$id gets down to speed in every corner', (file) => {
  for (const sheet of sheets) {
    const race = sheet.variants.find(({ name }) => name === 'race');
    const zone = solveZone(buildCar(file, race?.car), buildCorner(sheet, 'race'));
    expect(zone.tooFastMps, sheet.id).toBe(0);
    expect(zone.durationS, sheet.id).toBeGreaterThan(0.3);
    expect(zone.points.at(-1)?.speedMps ?? 0, sheet.id).toBeGreaterThan(10);
  }
});

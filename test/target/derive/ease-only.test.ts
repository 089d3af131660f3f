import { describe, expect, test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import { buildCorner, variantOfSheet } from '../../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../../src/corner/corner-sheet.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { CARS, derivedIn, SHEETS } from './bundled-zones.ts';

/** A gear more in between, or the steps of the solver: half of it is missed by the file. */
const NOTHING_TO_A_FOOT = 0.02;

describe('a foot that only eases', () => {
  test.each(SHEETS.filter(({ id }) => ['coil-bend', 'kiln-hairpin'].includes(id)))(
    'never comes back in $id, in any car and variant',
    (sheet) => {
      for (const derived of CARS.flatMap((file) => derivedIn(sheet, file)))
        expect(derived?.risesAgainLevel ?? 0, derived?.car.id).toBeLessThan(NOTHING_TO_A_FOOT);
    },
  );

  // Whether it can come back is a matter of a hair in some of them; what the car is told must not be.
  test.each(CARS)('brakes $id at the same place with a few milligrams more of fuel', (file) => {
    const sheet = SHEETS.find(({ id }) => id === 'coil-bend') as CornerSheet;
    for (const derived of derivedIn(sheet, file)) {
      if (derived === null) throw new Error(`${file.id} needs no brake`);
      const { car, corner, zone } = derived;
      const chassis = { ...car.chassis, massKg: car.chassis.massKg * (1 + 1e-8) };
      const other = deriveTarget({ ...car, chassis }, corner).zone;
      expect(Math.abs(other.brakePointM - zone.brakePointM), corner.variant).toBeLessThan(0.2);
    }
  });

  test.each(CARS)(
    'has $id slow enough before the second apex, and is told what that costs',
    (file) => {
      const sheet = SHEETS.find(({ id }) => id === 'twin-barrows') as CornerSheet;
      const car = buildCar(file, variantOfSheet(sheet, 'race').car);
      const corner = buildCorner(sheet, 'race');
      const quick = { ...car, driver: { ...car.driver, releaseNps: Number.POSITIVE_INFINITY } };
      const [eased, back] = [deriveTarget(car, corner), deriveTarget(quick, corner)];
      expect(back.risesAgainLevel).toBeGreaterThan(0.1);
      expect(eased.zone.brakePointM).toBeLessThan(back.zone.brakePointM);
      expect(eased.keys.slowest.speedMps).toBeCloseTo(back.keys.slowest.speedMps, 9);
      expect(eased.zone.footLossS()).toBeGreaterThan(0.05);
      for (const { frontUse, rearUse } of eased.zone.points)
        expect(Math.max(frontUse, rearUse)).toBeLessThan(1 + 1e-6);
    },
  );
});

import { expect, test } from 'vitest';
import { carCautions } from '../../src/commands/car-cautions.ts';
import { CARS, SHEETS } from '../target/derive/bundled-zones.ts';

const sheet = SHEETS.find(({ id }) => id === 'quarry-drop')!;
const cautions = (id: string) =>
  carCautions(CARS.find((car) => car.id === id)!, sheet, 'qualifying');

test('a car that cannot come as fast as the sheet says is told of', () => {
  expect(cautions('light-single-seater')).toEqual([
    'Caution: Tindle 285 is over its rev limit in gear 4 at this approach speed: `ebbline target derive` says more.',
  ]);
});

test('one that can is not', () => {
  expect(cautions('gt')).toEqual([]);
});

test('a gear that the car does not have is named', () => {
  const variants = sheet.variants.map((variant) => ({
    ...variant,
    gears: { ...variant.gears, approach: 9 },
  }));
  const car = CARS.find(({ id }) => id === 'gt')!;
  expect(carCautions(car, { ...sheet, variants }, 'qualifying')[0]).toContain('has no gear 9');
});

import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { CAR_SCHEMA } from '../../src/car/car-schema.ts';
import { numberKeys } from '../profile/number-keys.ts';

test('the published schema is the one the program uses (`vitest -u` writes it anew)', async () => {
  const file = new URL('../../profiles/schema/car.schema.json', import.meta.url);
  await expect(`${JSON.stringify(CAR_SCHEMA, null, 2)}\n`).toMatchFileSnapshot(file.pathname);
});

test('it is a valid schema of draft 7', () => {
  expect(new Ajv({ discriminator: true }).validateSchema(CAR_SCHEMA)).toBe(true);
});

test('every number carries its unit in its name, or is a ratio, a share, a friction or a factor', () => {
  const unitless =
    /(_share|_friction|friction|_ratio|ratio|factor|efficiency|_use|slope|sensitivity|resistance|final_drive|balance_bar_front)$/;
  const units =
    /_(kg|m|mm|m2|kgpm3|bar|s|n|c|deg_per_g|rpm|nm|kw|kmh|kgm2|jpkgk|wpm2k|hz|per_s|n_per_s|n_per_mm|force_n)$|^rpm$/;
  const names = numberKeys(CAR_SCHEMA);
  expect(names.length).toBeGreaterThan(60);
  for (const name of names) expect(unitless.test(name) || units.test(name), name).toBe(true);
});

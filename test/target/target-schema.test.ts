import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { TARGET_SCHEMA } from '../../src/target/target-schema.ts';
import { numberKeys } from '../profile/number-keys.ts';

test('the published schema is the one the program uses (`vitest -u` writes it anew)', async () => {
  const file = new URL('../../profiles/schema/target.schema.json', import.meta.url);
  await expect(`${JSON.stringify(TARGET_SCHEMA, null, 2)}\n`).toMatchFileSnapshot(file.pathname);
});

test('it is a valid schema of draft 7', () => {
  const ajv = new Ajv({ discriminator: true });
  expect(ajv.validateSchema(TARGET_SCHEMA)).toBe(true);
  expect(() => ajv.compile(TARGET_SCHEMA)).not.toThrow();
});

test('every number carries its unit in its name, or is a level, a share or a count', () => {
  const unitless = new Set(['level', 'share', 'gear', 'number']);
  const shapeNumbers = new Set(['exponent', 'e_folds']);
  const names = numberKeys(TARGET_SCHEMA);
  expect(names.length).toBeGreaterThan(20);
  for (const name of names)
    expect(
      unitless.has(name) ||
        shapeNumbers.has(name) ||
        /_(s|m|kmh|mph|mps|deg|n|kgf|lbf|bar|psi|hz|level|share|reps)$/.test(name),
      name,
    ).toBe(true);
});

import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { CORNER_SCHEMA } from '../../src/corner/corner-schema.ts';

test('the published schema is the one the program uses (`vitest -u` writes it anew)', async () => {
  const file = new URL('../../profiles/schema/corner.schema.json', import.meta.url);
  await expect(`${JSON.stringify(CORNER_SCHEMA, null, 2)}\n`).toMatchFileSnapshot(file.pathname);
});

test('it is a valid schema of draft 7', () => {
  const ajv = new Ajv({ discriminator: true });
  expect(ajv.validateSchema(CORNER_SCHEMA)).toBe(true);
  expect(() => ajv.compile(CORNER_SCHEMA)).not.toThrow();
});

import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { CORNER_SCHEMA } from '../../src/corner/corner-schema.ts';

test('the published schema is the one the program uses (npm run schemas writes it)', () => {
  const file = new URL('../../profiles/schema/corner.schema.json', import.meta.url);
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(JSON.stringify(CORNER_SCHEMA)));
});

test('it is a valid schema of draft 7', () => {
  const ajv = new Ajv({ discriminator: true });
  expect(ajv.validateSchema(CORNER_SCHEMA)).toBe(true);
  expect(() => ajv.compile(CORNER_SCHEMA)).not.toThrow();
});

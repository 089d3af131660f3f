import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { EVENT_SCHEMA } from '../../../src/drill/event/event-schema.ts';

test('the published schema is the one the program uses (`vitest -u` writes it anew)', async () => {
  const file = new URL('../../../profiles/schema/event.schema.json', import.meta.url);
  await expect(`${JSON.stringify(EVENT_SCHEMA, null, 2)}\n`).toMatchFileSnapshot(file.pathname);
});

test('it is a valid schema of draft 7', () => {
  const ajv = new Ajv({ discriminator: true });
  expect(ajv.validateSchema(EVENT_SCHEMA)).toBe(true);
  expect(() => ajv.compile(EVENT_SCHEMA)).not.toThrow();
});

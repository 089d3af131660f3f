import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { PLAN_SCHEMA } from '../../../src/drill/plan/plan-schema.ts';

test('the published schema is the one the program uses (`vitest -u` writes it anew)', async () => {
  const file = new URL('../../../profiles/schema/plan.schema.json', import.meta.url);
  await expect(`${JSON.stringify(PLAN_SCHEMA, null, 2)}\n`).toMatchFileSnapshot(file.pathname);
});

test('it is a valid schema of draft 7', () => {
  const ajv = new Ajv({ discriminator: true });
  expect(ajv.validateSchema(PLAN_SCHEMA)).toBe(true);
  expect(() => ajv.compile(PLAN_SCHEMA)).not.toThrow();
});

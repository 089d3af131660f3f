import { readdirSync, readFileSync } from 'node:fs';
import { Ajv, type ValidateFunction } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { CAR_SCHEMA } from '../../src/car/car-schema.ts';
import { CORNER_SCHEMA } from '../../src/corner/corner-schema.ts';
import { PLAN_SCHEMA } from '../../src/drill/plan/plan-schema.ts';
import { TARGET_SCHEMA } from '../../src/target/target-schema.ts';

const DIST = new URL('../../dist/profile/validator-of.js', import.meta.url).href;
const PROFILES = new URL('../../profiles/', import.meta.url);

const { validatorOf } = (await import(DIST)) as { validatorOf(schema: object): ValidateFunction };

/** The library's own compiler, with its default ways, on the schema as published. */
function reference(schema: object): ValidateFunction {
  return new Ajv({ allErrors: true, discriminator: true, strict: false }).compile(schema);
}

const verdict = (validate: ValidateFunction, value: unknown): unknown => {
  validate(value);
  return (validate.errors ?? []).map(({ instancePath, keyword, params }) => ({
    instancePath,
    keyword,
    params,
  }));
};

const kinds = [
  { folder: 'cars', schema: CAR_SCHEMA },
  { folder: 'corners', schema: CORNER_SCHEMA },
  { folder: 'targets', schema: TARGET_SCHEMA },
  { folder: 'plans', schema: PLAN_SCHEMA },
];

/** A value with one of its leaves or groups put in another's place. */
function spoilt(value: unknown, pick: () => number): unknown {
  if (typeof value !== 'object' || value === null || pick() < 0.2) {
    return [null, 'x', -1e9, [], {}][Math.floor(pick() * 5)];
  }
  const copy = structuredClone(value) as Record<string, unknown>;
  const keys = Object.keys(copy);
  const key = keys[Math.floor(pick() * keys.length)] ?? 'new_key';
  if (pick() < 0.2) delete copy[key];
  else copy[key] = spoilt(copy[key], pick);
  return copy;
}

describe.each(kinds)('the validator built for $folder', ({ folder, schema }) => {
  const values = readdirSync(new URL(folder, PROFILES)).map((file) =>
    parse(readFileSync(new URL(`${folder}/${file}`, PROFILES), 'utf8')),
  );
  const built = validatorOf(schema);
  const compiled = reference(schema);

  test('accepts the bundled files', () => {
    for (const value of values) expect(verdict(built, value)).toEqual([]);
  });

  test('finds in spoilt files what one compiled now finds', () => {
    const picks = fc.array(fc.double({ min: 0, max: 0.999, noNaN: true }), { minLength: 40 });
    fc.assert(
      fc.property(fc.constantFrom(...values), picks, (value, numbers) => {
        let at = 0;
        const broken = spoilt(value, () => numbers[at++ % numbers.length] ?? 0);
        expect(verdict(built, broken)).toEqual(verdict(compiled, broken));
      }),
    );
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { CAR_SCHEMA } from '../../src/car/car-schema.ts';
import { CORNER_SCHEMA } from '../../src/corner/corner-schema.ts';
import { EVENT_SCHEMA } from '../../src/drill/event/event-schema.ts';
import { PLAN_SCHEMA } from '../../src/drill/plan/plan-schema.ts';
import { readProfile } from '../../src/profile/read-profile.ts';
import type { Schema } from '../../src/profile/schema.ts';
import { TARGET_SCHEMA } from '../../src/target/target-schema.ts';

/** As built, where the bundled profiles are known by their text; the sources know none. */
const built = (await import(
  new URL('../../dist/profile/read-profile.js', import.meta.url).href
)) as {
  readonly readProfile: typeof readProfile;
};
const { knownProfile } = (await import(
  new URL('../../dist/profile/known-profile.js', import.meta.url).href
)) as { knownProfile(text: string, schema: Schema): unknown };

const PROFILES = new URL('../../profiles/', import.meta.url);
const files = Object.entries({
  cars: CAR_SCHEMA,
  corners: CORNER_SCHEMA,
  events: EVENT_SCHEMA,
  plans: PLAN_SCHEMA,
  targets: TARGET_SCHEMA,
}).flatMap(([folder, schema]) =>
  readdirSync(new URL(folder, PROFILES)).map((name) => ({
    path: `${folder}/${name}`,
    schema,
    text: readFileSync(new URL(`${folder}/${name}`, PROFILES), 'utf8'),
  })),
);

describe.each(files)('$path', ({ schema, text }) => {
  test('is known by its text, with the value that the YAML library reads', () => {
    expect(knownProfile(text, schema)).toEqual(parse(text));
    expect(built.readProfile(text, schema)).toEqual({ kind: 'read', value: parse(text) });
  });

  test('is no longer known when a character is added', () => {
    expect(knownProfile(`${text}#`, schema)).toBeUndefined();
    expect(built.readProfile(`${text}#`, schema)).toEqual(readProfile(`${text}#`, schema));
  });

  test('is not known as another kind of file', () => {
    for (const other of files)
      if (other.schema !== schema) expect(knownProfile(text, other.schema)).toBeUndefined();
  });
});

test('a value that was changed does not change the next', () => {
  const { schema, text } = files[0]!;
  const value = knownProfile(text, schema) as Record<string, unknown>;
  value.id = 'changed';
  expect(knownProfile(text, schema)).toEqual(parse(text));
});

test('rules that no schema can say are asked of a known profile too, and placed', () => {
  const { schema, text } = files[0]!;
  const key = Object.keys(parse(text) as object)[1]!;
  const rules = () => [{ path: [key], what: 'it is odd', next: 'Make it even.' }];
  const reading = built.readProfile(text, schema, rules);
  expect(reading).toEqual(readProfile(text, schema, rules));
  expect(reading).toMatchObject({ kind: 'refused', problems: [{ what: 'it is odd' }] });
});

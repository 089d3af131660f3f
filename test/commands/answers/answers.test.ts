import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { list, numbers, object, text } from '../../../src/commands/answers/answer-parts.ts';
import type { AnswerSchema } from '../../../src/commands/answers/answer-schema.ts';
import { ANSWERING, answerSchemaOf } from '../../../src/commands/answers/answers.ts';
import { DIAGNOSIS_ANSWER } from '../../../src/commands/answers/diagnosis-answer.ts';
import { withDefs } from '../../../src/commands/answers/with-defs.ts';
import { CATALOGUE } from '../../../src/commands/catalogue.ts';
import { blockDiagnosis } from '../../../src/drill/diagnosis/block-diagnosis.ts';
import { diagnosisJson } from '../../../src/drill/diagnosis/diagnosis-json.ts';
import { rampRep } from '../../drill/diagnosis/ramp-reps.ts';
import { NEVER_BRAKED, RAMP } from '../../drill/drill-rig.ts';
import { runCommand } from '../run-command.ts';

/** House rule: a number's name ends in its unit, or in one of the few words for what has none. */
const UNIT_ENDINGS =
  /(^|_)(s|ms|m|mm|kg|n|lbf|bar|g|hz|rpm|deg|percent|mps|kmh|mps2|level|share|points|score|counts?|ratio|factor|deviations|agreement|version|id|gear|reps|weeks|practices|utilization|margin|per_(m|s|g|mm|week|count|rep|practice))$/;

/** Numbers without a unit, each a decision; low and high are in the unit of their interval. */
const WITHOUT_UNIT = new Set(
  `low high value lowest highest car rig rise peak start_of_release final_release brake_off turn_in apex
  rep block zone lap line column number practice format interface missed_week pedal_change_week
  aborted most gaps gears reports dropped_reports buttons days_left until_rep rep_number
  missing_practices_for_plateau most_shown_in_a_row
  mann_kendall_statistic mann_kendall_chance autocorrelation weighted_mean_weight exponent
  corrected_information smoothness_difference pad_friction_front pad_friction_rear grip fatigue_limit
  bit_offset bit_size usage_page logical_min logical_max physical_min physical_max unit unit_exponent`.split(
    /\s+/,
  ),
);

/** Lists of identities and of raw values. */
const LISTS_WITHOUT_UNIT = new Set(['rig_reps', 'zones', 'reps', 'values']);

interface Named {
  readonly name: string;
  /** Of what it is a part. */
  readonly parent: string;
  readonly schema: AnswerSchema;
}

/** Every field of a schema, whatever it is inside of. */
function fieldsOf(schema: AnswerSchema, name: string, parent: string): Named[] {
  const { properties = {}, items, anyOf = [], additionalProperties, $defs = {} } = schema;
  return [
    { name, parent, schema },
    ...Object.entries(properties).flatMap(([key, field]) => fieldsOf(field, key, name)),
    ...Object.entries($defs).flatMap(([key, part]) => fieldsOf(part, key, name)),
    ...(items === undefined ? [] : fieldsOf(items, name, parent)),
    ...anyOf.flatMap((form) => fieldsOf(form, name, parent)),
    ...(typeof additionalProperties === 'object'
      ? fieldsOf(additionalProperties, name, parent)
      : []),
  ];
}

const typesOf = ({ type = [] }: AnswerSchema): readonly string[] =>
  typeof type === 'string' ? [type] : type;

const schemas = await Promise.all(
  ANSWERING.map(async (name) => ({ name, schema: (await answerSchemaOf(name))! })),
);

describe('the schema of a diagnosis', () => {
  const validate = new Ajv2020({ strict: true }).compile(withDefs(DIAGNOSIS_ANSWER));
  const later = [2, 3, 4].map((place) => rampRep({ pressedAtS: 0.1 }, place));

  test.each([
    ['was never braked', { outcome: NEVER_BRAKED, voided: null }],
    ['is void', { outcome: null, voided: 'aborted' as const }],
  ])('holds for a block whose first rep %s', (_, first) => {
    const reps = [{ place: 1, feedback: 'shown' as const, curve: null, ...first }, ...later];
    const answer = JSON.parse(JSON.stringify(diagnosisJson(blockDiagnosis(reps, RAMP))));
    validate(answer);
    expect(validate.errors).toBeNull();
    expect(answer.start).toMatchObject({ reps_count: 3 });
  });
});

describe('the schemas of answers', () => {
  test('are there for every command with --json, and for no other', async () => {
    const commands = await Promise.all(CATALOGUE.map(({ load }) => load()));
    const withJson = commands.filter(({ options }) => 'json' in options).map(({ name }) => name);
    expect(withJson).toEqual(ANSWERING);
    expect(withJson.length).toBeGreaterThan(35);
  });

  test.each(schemas)('$name: is a valid schema of draft 2020-12', ({ schema }) => {
    const ajv = new Ajv2020({ strict: true });
    expect(() => ajv.compile(schema)).not.toThrow();
    expect(ajv.errors ?? null).toBeNull();
  });

  test.each(schemas)('$name: every number says its unit by its name', ({ name, schema }) => {
    const numbers = fieldsOf(schema, name, '').filter(({ schema: field }) =>
      typesOf(field).some((type) => type === 'number' || type === 'integer'),
    );
    const unnamed = numbers.filter(
      (field) =>
        !UNIT_ENDINGS.test(field.name) &&
        !WITHOUT_UNIT.has(field.name) &&
        !LISTS_WITHOUT_UNIT.has(field.name) &&
        !['report_bytes', 'reps_of', 'shifts_before_apex_m'].includes(field.name),
    );
    expect(unnamed.map((field) => `${field.parent}.${field.name}`)).toEqual([]);
  });

  test.each(schemas)(
    '$name: what is part of a whole has its unit from that',
    ({ name, schema }) => {
      const parts = fieldsOf(schema, name, '').filter((field) =>
        ['low', 'lowest', 'rig', 'start_of_release'].includes(field.name),
      );
      for (const { parent, schema: part } of parts)
        if (typesOf(part).includes('number'))
          expect(parent).toMatch(/(^|_)(s|m|mm|kmh|deg|gear|level|share|ratio|agreement)(_|$)/);
    },
  );

  test.each(schemas)('$name: no field is unexplained, none may be missing', ({ name, schema }) => {
    for (const { name: key, schema: field } of fieldsOf(schema, name, '')) {
      if (field.properties === undefined) continue;
      expect(field.additionalProperties, key).toBe(false);
      expect(field.required, key).toEqual(Object.keys(field.properties));
      for (const [inner, { description, $ref }] of Object.entries(field.properties))
        expect(description ?? $ref, `${key}.${inner}`).toMatch(/./);
    }
  });

  test.each(schemas)('$name: names are in snake_case', ({ name, schema }) => {
    for (const { name: key } of fieldsOf(schema, 'answer', name))
      expect(key).toMatch(/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/);
  });
});

test('a long part that stands in several places is written once', () => {
  const part = object('A part', numbers({ start_m: 'x'.repeat(300), end_m: 'y'.repeat(300) }));
  const whole = withDefs(
    object('Whole', { part, parts: list('more', part), other: text('short') }),
  );
  expect(whole).toMatchObject({
    properties: { part: { $ref: '#/$defs/part' }, parts: { items: { $ref: '#/$defs/part' } } },
    $defs: { part },
  });
  const validate = new Ajv2020({ strict: true }).compile(whole);
  const good = { start_m: 1, end_m: 2 };
  expect(validate({ part: good, parts: [good], other: '' })).toBe(true);
  expect(validate({ part: good, parts: [{ start_m: 1 }], other: '' })).toBe(false);
});

describe('help json', () => {
  test('lists the commands', async () => {
    const { code, stdout } = await runCommand(['help', 'json']);
    expect(code).toBe(0);
    for (const name of ANSWERING) expect(stdout.replaceAll(/\s+/g, ' ')).toContain(name);
  });

  test('COMMAND prints a schema and nothing else', async () => {
    const { code, stdout, stderr } = await runCommand(['help', 'json', 'car', 'list']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(JSON.parse(stdout)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'ebbline car list --json',
      properties: {
        cars: {
          items: {
            properties: {
              mass_kg: { type: 'number', description: 'mass with driver (kg)' },
              top_speed_kmh: { type: 'number', description: 'top speed (km/h)' },
            },
          },
        },
      },
    });
  });

  test.each([
    [['progres'], 'Did you mean progress?'],
    [['rig', 'setup'], '`ebbline help json` lists them'],
  ])('%j says what there is', async (words, next) => {
    const { code, stdout, stderr } = await runCommand(['help', 'json', ...words]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(next);
  });
});

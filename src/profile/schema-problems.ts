import type { ErrorObject } from 'ajv';
import { nearest } from './nearest.ts';
import { printable, shown } from './printable.ts';
import type { ProfileProblem } from './profile-problem.ts';
import type { ProfilePath, ProfileText } from './profile-text.ts';
import { expectation, type Schema } from './schema.ts';
import { validatorOf } from './validator-of.ts';

/** What a schema minds about a value. */
interface SchemaProblems {
  readonly problems: readonly ProfileProblem[];
  /** True where numbers and groups are all as they should be, so that rules over them make sense. */
  readonly bearRules: boolean;
}

/** Keywords of problems that leave the numbers of a file and its groups whole. */
const OF_WORDS: readonly string[] = ['additionalProperties', 'maxLength', 'minLength', 'pattern'];

/** Everything about the value that the schema does not allow, in words a coach can act on. */
export function schemaProblems(text: ProfileText, schema: Schema): SchemaProblems {
  const validate = validatorOf(schema);
  validate(text.value);
  const errors = validate.errors ?? [];
  return {
    problems: errors
      .filter((error) => !explainedByChoice(error, errors))
      .map((e) => explain(e, schema, text)),
    bearRules: errors.every(({ keyword }) => OF_WORDS.includes(keyword)),
  };
}

/** A failed choice brings errors about its missing keys along; the choice itself says it better. */
function explainedByChoice(error: ErrorObject, all: readonly ErrorObject[]): boolean {
  if (error.keyword !== 'required') return false;
  return all.some(
    (other) =>
      error.instancePath === other.instancePath &&
      (other.keyword === 'oneOf'
        ? error.schemaPath.startsWith(`${other.schemaPath}/`)
        : other.keyword === 'discriminator' && other.params.tag === error.params.missingProperty),
  );
}

type Words = Pick<ProfileProblem, 'what' | 'next'>;

function explain(error: ErrorObject, whole: Schema, text: ProfileText): ProfileProblem {
  const path = stepsOf(error.instancePath);
  const schema = valueAt(whole, stepsOf(error.schemaPath).slice(0, -1)) as Schema;
  const { params } = error;
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(params.additionalProperty);
      return { ...text.placeOfKey([...path, key]), ...unknownKey(key, schema) };
    }
    case 'required':
      return { ...text.placeOfValue(path), ...missingKey(path, params.missingProperty, schema) };
    case 'oneOf':
      return { ...text.placeOfValue(path), ...keyChoice(path, schema, params.passingSchemas) };
    case 'discriminator': {
      const tag = String(params.tag);
      const words = wrongTag(path, tag, params.tagValue, schema);
      return { ...text.placeOfValue([...path, tag]), ...words };
    }
    default:
      return { ...text.placeOfValue(path), ...wrongValue(path, valueAt(text.value, path), schema) };
  }
}

/** Steps of a JSON pointer (RFC 6901), with or without the `#` of a fragment. */
function stepsOf(pointer: string): string[] {
  const unescaped = (step: string): string =>
    decodeURIComponent(step).replaceAll('~1', '/').replaceAll('~0', '~');
  return pointer.split('/').slice(1).map(unescaped);
}

function valueAt(root: unknown, path: ProfilePath): unknown {
  return path.reduce<unknown>((value, step) => (value as Record<string, unknown>)[step], root);
}

/** `gears[2].time_s`; the file itself at the top. */
function named(path: ProfilePath): string {
  if (path.length === 0) return 'the file';
  const name = path
    .map((step, i) => (/^\d+$/.test(String(step)) ? `[${step}]` : `${i === 0 ? '' : '.'}${step}`))
    .join('');
  return printable(name);
}

function unknownKey(key: string, schema: Schema): Words {
  const allowed = Object.keys(schema.properties ?? {});
  const close = nearest(key, allowed);
  const all = `Allowed here: ${allowed.join(', ')}.`;
  if (close?.startsWith(`${key}_`))
    return { what: `${printable(key, 60)} has no unit`, next: `Write ${close}. ${all}` };
  const suggestion = close === null ? '' : `Did you mean ${close}? `;
  return { what: `unknown key ${printable(key, 60)}`, next: `${suggestion}${all}` };
}

function missingKey(path: ProfilePath, key: unknown, schema: Schema): Words {
  const wanted = schema.properties?.[String(key)];
  const meaning = wanted === undefined ? '' : `: ${expectation(wanted)}`;
  return { what: `${named(path)} has no ${String(key)}`, next: `Add ${String(key)}${meaning}.` };
}

/** Keys that say the same in different units: exactly one is to be given. */
function keyChoice(path: ProfilePath, schema: Schema, passing: unknown): Words {
  const keys = (schema.oneOf ?? []).flatMap((branch) => branch.required ?? []);
  const next = `Give exactly one of ${keys.join(', ')}.`;
  if (!Array.isArray(passing)) return { what: `${named(path)} has no ${keys[0]}`, next };
  const given = passing.map((index) => keys[Number(index)]);
  return { what: `${given.join(' and ')} say the same`, next };
}

function wrongTag(path: ProfilePath, tag: string, found: unknown, schema: Schema): Words {
  const allowed = (schema.oneOf ?? []).flatMap((branch) => valuesOf(branch.properties?.[tag]));
  const next = oneOf(found, allowed);
  if (found === undefined) return { what: `${named(path)} has no ${tag}`, next };
  return { what: `${named([...path, tag])} is ${shown(found)}`, next };
}

function valuesOf(schema: Schema | undefined): readonly string[] {
  if (schema?.const !== undefined) return [String(schema.const)];
  return (schema?.enum ?? []).map(String);
}

function oneOf(found: unknown, allowed: readonly string[]): string {
  const close = typeof found === 'string' ? nearest(found, allowed) : null;
  const suggestion = close === null ? '' : `Did you mean ${close}? `;
  return `${suggestion}Use one of ${allowed.join(', ')}.`;
}

function wrongValue(path: ProfilePath, found: unknown, schema: Schema): Words {
  const what = `${named(path)} is ${shown(found)}`;
  const allowed = valuesOf(schema);
  if (allowed.length > 0) return { what, next: oneOf(found, allowed) };
  return { what, next: `Use ${expectation(schema)}.` };
}

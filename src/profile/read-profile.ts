import type { BrokenRule } from './broken-rule.ts';
import { knownProfile } from './known-profile.ts';
import type { ProfileReading } from './profile-reading.ts';
import { parseProfile } from './profile-text.ts';
import type { Schema } from './schema.ts';
import { schemaProblems } from './schema-problems.ts';

/**
 * Text of a YAML 1.2 profile to a value that fits `schema`, with every problem at once. Pure, and throws nothing
 * for any text.
 *
 * @typeParam T the value's type; the caller answers for its agreeing with the schema
 * @param rulesOf what no schema can say. They are asked as well where the schema minds nothing but unknown keys and words,
 *   so that one reading tells all; where a number is missing or no number they would blame the wrong place.
 */
export function readProfile<T>(
  text: string,
  schema: Schema,
  rulesOf: (value: T) => readonly BrokenRule[] = () => [],
): ProfileReading<T> {
  const known = knownProfile(text, schema) as T | undefined;
  if (known !== undefined && rulesOf(known).length === 0) return { kind: 'read', value: known };
  const parsed = parseProfile(text);
  if (parsed.value === undefined) return { kind: 'refused', problems: parsed.problems };
  const found = schemaProblems(parsed, schema);
  const value = parsed.value as T;
  const broken = found.bearRules
    ? rulesOf(value).map(({ path, what, next }) => ({ ...parsed.placeOfValue(path), what, next }))
    : [];
  const problems = [...parsed.problems, ...found.problems, ...broken];
  if (problems.length > 0) return { kind: 'refused', problems };
  return { kind: 'read', value };
}

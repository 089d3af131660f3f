import type { ProfilePlace, ProfileProblem } from './profile-problem.ts';
import { type ProfilePath, parseProfile } from './profile-text.ts';
import type { Schema } from './schema.ts';
import { schemaProblems } from './schema-problems.ts';

/** What came of reading a profile: a value that fits the schema, or the problems, and never both. */
export type ProfileReading<T> =
  | {
      readonly kind: 'read';
      readonly value: T;
      /** For problems that only the domain can see: the place of a value that exists or would. */
      placeOf(path: ProfilePath): ProfilePlace;
    }
  | { readonly kind: 'refused'; readonly problems: readonly ProfileProblem[] };

/**
 * Text of a YAML 1.2 profile to a value that fits `schema`, with every problem at once. Pure, and throws nothing
 * for any text.
 *
 * @typeParam T the value's type; the caller answers for its agreeing with the schema
 */
export function readProfile<T>(text: string, schema: Schema): ProfileReading<T> {
  const parsed = parseProfile(text);
  const problems =
    parsed.value === undefined
      ? parsed.problems
      : [...parsed.problems, ...schemaProblems(parsed, schema)];
  if (problems.length > 0) return { kind: 'refused', problems };
  return { kind: 'read', value: parsed.value as T, placeOf: parsed.placeOfValue };
}

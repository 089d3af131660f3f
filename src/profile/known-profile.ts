import type { Schema } from './schema.ts';

/**
 * The value in a text that was read before and fits the schema, or undefined. Each call gives a value of its own.
 *
 * The build puts in place of this file one that knows the profiles that come with the program (see
 * `build/precompile-profiles.ts`); until then none is known.
 */
export function knownProfile(_text: string, _schema: Schema): unknown {
  return undefined;
}

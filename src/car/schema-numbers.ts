import type { Schema } from '../profile/schema.ts';
import { group } from '../profile/schema-parts.ts';

/** A number above `least`, at most `most`. */
export function over(least: number, most: number, description: string): Schema {
  return { type: 'number', description, exclusiveMinimum: least, maximum: most };
}

/** A number from `least` to `most`, both allowed. */
export function from(least: number, most: number, description: string): Schema {
  return { type: 'number', description, minimum: least, maximum: most };
}

export function share(description: string): Schema {
  return from(0, 1, description);
}

/** A group whose keys are all required. */
export function allOf(properties: Readonly<Record<string, Schema>>): Schema {
  return group(properties, Object.keys(properties));
}

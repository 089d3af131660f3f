import type { Schema } from './schema.ts';

/** No control, format or separator characters, because the text goes to a terminal. */
const PLAIN = '[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]';

/** Text on one line. */
export function oneLine(description: string, maxLength: number): Schema {
  return { type: 'string', description, minLength: 1, maxLength, pattern: `^${PLAIN}*$` };
}

/** Text that may be folded over several lines. */
export function someLines(description: string, maxLength: number): Schema {
  return { type: 'string', description, minLength: 1, maxLength, pattern: `^(\\n|${PLAIN})*$` };
}

/** A group of keys; any other key is a problem. */
export function group(
  properties: Readonly<Record<string, Schema>>,
  required: readonly string[] = [],
): Schema {
  return { type: 'object', properties, required, additionalProperties: false };
}

/** One of several groups, told apart by the value of one key that all of them require. */
export function choiceBy(propertyName: string, oneOf: readonly Schema[]): Schema {
  return { type: 'object', discriminator: { propertyName }, required: [propertyName], oneOf };
}

/** To be added to a group whose keys say the same in different units: exactly one has to be there. */
export function exactlyOne(...names: readonly string[]): Schema {
  return { oneOf: names.map((name) => ({ required: [name] })) };
}

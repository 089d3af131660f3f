/** A JSON Schema (draft 7) as plain data, with the `discriminator` annotation that picks a `oneOf` branch by a key. */
export interface Schema {
  readonly $schema?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly default?: unknown;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly discriminator?: { readonly propertyName: string };
}

/** What the schema asks for, in words that follow "Use". */
export function expectation(schema: Schema): string {
  if (schema.const !== undefined) return String(schema.const);
  if (schema.enum !== undefined) return `one of ${schema.enum.join(', ')}`;
  const kind = `${KIND_WORDS[schema.type ?? ''] ?? 'another value'}${rangeWords(schema)}`;
  if (schema.description === undefined) return kind;
  return `${kind} (${schema.description.toLowerCase()})`;
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  integer: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  object: 'a group of keys',
};

function rangeWords(schema: Schema): string {
  const { minimum, maximum, exclusiveMinimum, minLength, maxLength, minItems, maxItems } = schema;
  if (maxLength !== undefined) return ` of ${minLength ?? 0} to ${maxLength} characters`;
  if (maxItems !== undefined) return ` of ${minItems ?? 0} to ${maxItems}`;
  if (exclusiveMinimum !== undefined)
    return ` above ${exclusiveMinimum}${maximum === undefined ? '' : `, at most ${maximum}`}`;
  if (minimum !== undefined && maximum !== undefined) return ` from ${minimum} to ${maximum}`;
  if (minimum !== undefined) return ` of at least ${minimum}`;
  return maximum === undefined ? '' : ` of at most ${maximum}`;
}

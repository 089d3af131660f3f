import type { AnswerFields, AnswerSchema } from './answer-schema.ts';
import { unitOfName } from './unit-of-name.ts';

/** What is said of each of several fields. */
type Descriptions = Readonly<Record<string, string>>;

/** An object that has just these fields, all of them. */
export function object(description: string, properties: AnswerFields): AnswerSchema {
  const required = Object.keys(properties);
  return { type: 'object', description, properties, required, additionalProperties: false };
}

/** The same, or null. */
export function orNull(schema: AnswerSchema): AnswerSchema {
  const { type, description, enum: values } = schema;
  if (typeof type !== 'string') throw new Error('only one type can be null as well');
  return {
    ...schema,
    type: [type, 'null'],
    description: `${description}; null where there is none`,
    ...(values === undefined ? {} : { enum: [...values, null] }),
  };
}

export function text(description: string): AnswerSchema {
  return { type: 'string', description };
}

/** One of a few words. */
export function oneOfWords(description: string, ...words: readonly string[]): AnswerSchema {
  return { type: 'string', description, enum: words };
}

/** A local date. */
export function day(description: string): AnswerSchema {
  return { type: 'string', description, pattern: '^\\d{4}-\\d{2}-\\d{2}$' };
}

/** True or false. */
export function flag(description: string): AnswerSchema {
  return { type: 'boolean', description };
}

export function list(description: string, items: AnswerSchema): AnswerSchema {
  return { type: 'array', description, items };
}

export function texts(description: string): AnswerSchema {
  return list(description, { type: 'string' });
}

/** Numbers whose names end in their units; `of` names the whole that they stand in where it has the unit for them. */
export function numbers(fields: Descriptions, of?: string): AnswerFields {
  return each(fields, (name, what) => ({ type: 'number', description: inUnit(of ?? name, what) }));
}

/** The same, each null where it is not known. */
export function numbersOrNull(fields: Descriptions, of?: string): AnswerFields {
  return each(fields, (name, what) => ({
    type: ['number', 'null'],
    description: `${inUnit(of ?? name, what)}; null where it is not known`,
  }));
}

/** Lists of numbers, for example over time; fields of one object have equal lengths. */
export function columns(fields: Descriptions): AnswerFields {
  return each(fields, (name, what) => list(inUnit(name, what), { type: 'number' }));
}

/** How many, or which: whole numbers. */
export function wholes(fields: Descriptions): AnswerFields {
  return each(fields, (name, what) => ({ type: 'integer', description: inUnit(name, what) }));
}

/** The same, each null where there is none. */
export function wholesOrNull(fields: Descriptions): AnswerFields {
  return each(wholes(fields), (_, schema) => orNull(schema));
}

/** The ends of an interval; the field's name says the unit of both. */
export function interval(description: string): AnswerSchema {
  return orNull(
    object(description, {
      low: { type: 'number', description: 'in the unit of the interval' },
      high: { type: 'number', description: 'in the unit of the interval' },
      ...numbers({ attained_share: 'how often such an interval holds the true value' }),
    }),
  );
}

/** Several intervals. */
export function intervals(fields: Descriptions): AnswerFields {
  return each(fields, (_, what) => interval(what));
}

/** How many of each of what has names that are not known before. */
export function tally(description: string): AnswerSchema {
  return { type: 'object', description, additionalProperties: { type: 'integer' } };
}

/** One of several forms, each of them whole. */
export function eitherOf(description: string, ...anyOf: readonly AnswerSchema[]): AnswerSchema {
  return { description, anyOf };
}

function each<T>(
  fields: Readonly<Record<string, T>>,
  schemaOf: (name: string, field: T) => AnswerSchema,
): AnswerFields {
  return Object.fromEntries(
    Object.entries(fields).map(([name, field]) => [name, schemaOf(name, field)]),
  );
}

function inUnit(name: string, what: string): string {
  const unit = unitOfName(name);
  return unit === null ? what : `${what} (${unit})`;
}

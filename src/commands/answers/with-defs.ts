import type { AnswerSchema } from './answer-schema.ts';

/** A part shorter than this, as text, stands where it is used. */
const SHORTEST_CHARACTERS = 400;

/** The same schema with every long part that stands in several places written once, under `$defs`. */
export function withDefs(schema: AnswerSchema): AnswerSchema {
  const names = namesOfRepeated(schema);
  const shared = new Map([...names].map(([text, name]) => [text, `#/$defs/${name}`]));
  const $defs = Object.fromEntries(
    [...names].map(([text, name]) => [name, inside(JSON.parse(text), shared)]),
  );
  return { ...inside(schema, shared), ...(names.size === 0 ? {} : { $defs }) };
}

/** Names of the parts that occur more than once, by their text: that of the field where one stands first. */
function namesOfRepeated(schema: AnswerSchema): ReadonlyMap<string, string> {
  const seen = new Map<string, { readonly name: string; times: number }>();
  const look = (part: AnswerSchema, name: string): void => {
    const text = JSON.stringify(part);
    const before = text.length < SHORTEST_CHARACTERS ? undefined : seen.get(text);
    if (before !== undefined) {
      before.times++;
      return;
    }
    seen.set(text, { name, times: 1 });
    for (const [key, inner] of partsOf(part, name)) look(inner, key);
  };
  for (const [key, part] of partsOf(schema, 'answer')) look(part, key);
  const repeated = [...seen].filter(([, { times }]) => times > 1);
  const taken = new Map<string, number>();
  return new Map(
    repeated.map(([text, { name }]) => {
      const count = (taken.get(name) ?? 0) + 1;
      taken.set(name, count);
      return [text, count === 1 ? name : `${name}_${count}`];
    }),
  );
}

function partsOf(
  { properties = {}, items, anyOf = [] }: AnswerSchema,
  name: string,
): readonly (readonly [string, AnswerSchema])[] {
  return [
    ...Object.entries(properties),
    ...(items === undefined ? [] : [[name, items] as const]),
    ...anyOf.map((form) => [name, form] as const),
  ];
}

/** The schema with references in it, but not for itself. */
function inside(schema: AnswerSchema, shared: ReadonlyMap<string, string>): AnswerSchema {
  const { properties, items, anyOf } = schema;
  const refer = (part: AnswerSchema): AnswerSchema => {
    const $ref = shared.get(JSON.stringify(part));
    return $ref === undefined ? inside(part, shared) : { $ref };
  };
  return {
    ...schema,
    ...(properties === undefined
      ? {}
      : {
          properties: Object.fromEntries(
            Object.entries(properties).map(([key, part]) => [key, refer(part)]),
          ),
        }),
    ...(items === undefined ? {} : { items: refer(items) }),
    ...(anyOf === undefined ? {} : { anyOf: anyOf.map(refer) }),
  };
}

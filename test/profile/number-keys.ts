/** Names of all keys of a schema that hold a number, at any depth. */
export function numberKeys(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties } = schema as { properties?: Record<string, { type?: string }> };
  const own = Object.entries(properties ?? {}).flatMap(([name, { type }]) =>
    type === 'number' || type === 'integer' ? [name] : [],
  );
  return [...own, ...Object.values(schema).flatMap(numberKeys)];
}

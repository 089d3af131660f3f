/** JSON with the keys of every object in order of their code units, so that equal content is equal text. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part) ? inOrder(part) : part,
  );
}

function inOrder(object: object): object {
  return Object.fromEntries(Object.entries(object).sort(([a], [b]) => (a < b ? -1 : 1)));
}

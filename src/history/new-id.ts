/** A new random UUID (RFC 9562, version 4). What makes it is loaded with the first: reading a history needs none. */
export function newId(): string {
  return process.getBuiltinModule('node:crypto').randomUUID();
}

/** Bytes from hex digits; everything else is there for the reader. */
export function hex(text: string): Uint8Array {
  return Uint8Array.from(text.match(/[0-9a-fA-F]{2}/g) ?? [], (pair) => Number.parseInt(pair, 16));
}

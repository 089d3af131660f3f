const CHARACTERS: string[] = [];

/** The character of a code point: the same string each time, as making one costs more than finding it. */
export function characterOf(code: number): string {
  CHARACTERS[code] ??= String.fromCodePoint(code);
  return CHARACTERS[code]!;
}

const LONGEST_VALUE = 60;
const LONGEST_MESSAGE = 300;

/**
 * Text from a file as it may reach a terminal: control, format and line-separator characters are written as escapes,
 * and long text is cut.
 */
export function printable(text: string, longest: number = LONGEST_MESSAGE): string {
  const characters = [...text];
  const cut = characters.slice(0, longest).join('');
  const safe = cut.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, escaped);
  return characters.length > longest ? `${safe}...` : safe;
}

function escaped(character: string): string {
  return `\\u{${character.codePointAt(0)!.toString(16)}}`;
}

/** A value as it stands in the file, short enough for a message. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'a group of keys';
  if (value === null || value === undefined) return 'empty';
  return typeof value === 'string' ? `"${printable(value, LONGEST_VALUE)}"` : String(value);
}

import { cleanText } from './clean-text.ts';

/** Serial numbers that makers leave the same on every device: one character repeated, or a word for none. */
const CONSTANT = /^(?:(.)\1*|none|null|n\/a|default|serial(?: ?number)?)$/i;
const COUNTING = ['0123456789ABCDEF', '1234567890ABCDEF'];

/** A device's serial number as text, or null where it has none or one that tells no two devices apart. */
export function cleanSerial(serial: string | undefined): string | null {
  const text = cleanText(serial ?? '', 64);
  const counts = text.length > 4 && COUNTING.some((row) => row.startsWith(text.toUpperCase()));
  return text === '' || counts || CONSTANT.test(text) ? null : text;
}

import { printable } from '../profile/printable.ts';
import { LONGEST_LINE } from './longest-line.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text that HTML shows as it stands, in elements and in quoted attributes; control characters as visible escapes.
 *
 * @param longest in characters; what is longer is cut
 */
export function escapeHtml(text: string, longest: number = LONGEST_LINE): string {
  return printable(text, longest).replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);
}

import { escapeHtml } from '../escape-html.ts';

/** No code points of XML 1.0 (section 2.2), nor characters of Unicode. */
const NO_CHARACTER = /[\uFFFE\uFFFF]/g;

/**
 * Text of any length as HTML and XML show it as it stands, in elements and in quoted attributes. Control characters
 * and those that turn the direction of writing become visible escapes.
 */
export function escapeText(text: string): string {
  return escapeHtml(text, Number.POSITIVE_INFINITY).replace(
    NO_CHARACTER,
    (mark) => `\\u{${mark.codePointAt(0)!.toString(16)}}`,
  );
}

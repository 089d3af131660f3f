import { printable } from '../profile/printable.ts';
import { LONGEST_LINE } from './longest-line.ts';

/**
 * Text that Markdown shows as it stands, on one line: a backslash before what has a meaning within a line or at its
 * start (CommonMark 0.31, section 2.4), and into what would become a link by itself.
 */
export function escapeMarkdown(text: string): string {
  return printable(text, LONGEST_LINE)
    .replace(/[\\`*_[\]|~#<>&]/g, '\\$&')
    .replace(/:(?=\/)|@|(?<=www)\./gi, '\\$&')
    .replace(/^\s*([-+=])/, '\\$1')
    .replace(/^\s*(\d+)([.)])/, '$1\\$2');
}

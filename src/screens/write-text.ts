import { type CellGrid, type Pen, putCell } from './cell-grid.ts';
import { isPlain, narrowText } from './narrow-text.ts';

/** Greater code points take two code units of a string (UTF-16). */
const LAST_OF_ONE_UNIT = 0xffff;

/** Cells that a text takes. */
export function textWidth(text: string): number {
  return isPlain(text) ? text.length : [...narrowText(text)].length;
}

/** The text, cut to a width with an ellipsis where it is longer. */
export function fitText(text: string, width: number): string {
  if (text.length <= width && isPlain(text)) return text;
  const letters = [...narrowText(text)];
  if (letters.length <= width) return letters.join('');
  return width < 1
    ? ''
    : `${letters
        .slice(0, width - 1)
        .join('')
        .trimEnd()}…`;
}

/** Writes from (x, y) to the right, clipped at the grid's edges; returns the column after the text. */
export function writeText(grid: CellGrid, x: number, y: number, text: string, pen: Pen): number {
  const letters = narrowText(text);
  let column = x;
  for (let at = 0; at < letters.length; at++) {
    const code = letters.codePointAt(at)!;
    if (code > LAST_OF_ONE_UNIT) at++;
    putCell(grid, column++, y, code, pen);
  }
  return column;
}

/** Writes so that the last character stands in column `right`. */
export function writeRight(grid: CellGrid, right: number, y: number, text: string, pen: Pen): void {
  writeText(grid, right - textWidth(text) + 1, y, text, pen);
}

/** Writes in the middle of `width` columns from x. */
export function writeCentred(
  grid: CellGrid,
  x: number,
  width: number,
  y: number,
  text: string,
  pen: Pen,
): void {
  writeText(grid, x + Math.floor((width - textWidth(text)) / 2), y, text, pen);
}

/** The text in lines no wider than `width`, broken between words; a longer word is cut. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const longer = `${lines.at(-1) ?? ''} ${word}`;
    if (lines.length > 0 && textWidth(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(fitText(word, width));
  }
  return lines;
}

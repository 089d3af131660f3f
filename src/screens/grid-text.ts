import { BOLD, type CellGrid, DEFAULT_INK, REVERSE, UNDERLINE } from './cell-grid.ts';

/** The grid as lines of text without colour, trailing blanks left out. */
export function toText(grid: CellGrid): string {
  return rowsOf(grid, (row) => rowText(grid, row).trimEnd());
}

/** The grid as lines of text with SGR sequences (ECMA-48 section 8.3.117; colours as 38;5;n). */
export function toAnsi(grid: CellGrid): string {
  return rowsOf(grid, (row) => {
    let text = '';
    let last = '';
    for (let cell = row * grid.cols; cell < (row + 1) * grid.cols; cell++) {
      const sgr = sgrOf(grid.ink[cell]!, grid.style[cell]!);
      if (sgr !== last) text += sgr === '' ? '\x1b[0m' : `\x1b[0;${sgr}m`;
      last = sgr;
      text += String.fromCodePoint(grid.code[cell]!);
    }
    return last === '' ? text : `${text}\x1b[0m`;
  });
}

function rowsOf(grid: CellGrid, line: (row: number) => string): string {
  return Array.from({ length: grid.rows }, (_, row) => line(row)).join('\n');
}

function rowText(grid: CellGrid, row: number): string {
  return String.fromCodePoint(...grid.code.subarray(row * grid.cols, (row + 1) * grid.cols));
}

function sgrOf(ink: number, style: number): string {
  const parts = [];
  if (style & BOLD) parts.push('1');
  if (style & UNDERLINE) parts.push('4');
  if (style & REVERSE) parts.push('7');
  if (ink !== DEFAULT_INK) parts.push(`38;5;${ink}`);
  return parts.join(';');
}

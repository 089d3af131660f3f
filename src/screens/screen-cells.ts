import type { CellGrid } from './cell-grid.ts';

/** A row of the terminal library's picture: attribute and character of each cell. */
export type ScreenLine = [attribute: number, character: string][] & { dirty: boolean };

const DEFAULT_COLOUR = 0x1ff;
const CHARACTERS: string[] = [];

/** The library's attribute of a cell: style bits, ink, and always the terminal's own background. */
export function attributeOf(ink: number, style: number): number {
  return (style << 18) | ((ink & DEFAULT_COLOUR) << 9) | DEFAULT_COLOUR;
}

/**
 * Copies a grid into the picture, as far as both reach, and marks the rows that changed. The very last cell is left
 * out: some terminals scroll when it is written.
 */
export function copyCells(grid: CellGrid, lines: readonly ScreenLine[]): void {
  const rows = Math.min(grid.rows, lines.length);
  for (let y = 0; y < rows; y++) {
    const line = lines[y]!;
    const cols = Math.min(grid.cols, line.length - (y === lines.length - 1 ? 1 : 0));
    for (let x = 0; x < cols; x++) copyCell(grid, y * grid.cols + x, line, line[x]!);
  }
}

function copyCell(
  grid: CellGrid,
  index: number,
  line: ScreenLine,
  cell: [attribute: number, character: string],
): void {
  const code = grid.code[index]!;
  CHARACTERS[code] ??= String.fromCodePoint(code);
  const attribute = attributeOf(grid.ink[index]!, grid.style[index]!);
  if (cell[0] === attribute && cell[1] === CHARACTERS[code]) return;
  cell[0] = attribute;
  cell[1] = CHARACTERS[code]!;
  line.dirty = true;
}

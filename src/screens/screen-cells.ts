import { attributeOf } from './cell-attribute.ts';
import type { CellGrid } from './cell-grid.ts';
import { characterOf } from './character-of.ts';

/** A row of the terminal library's picture: attribute and character of each cell. */
export type ScreenLine = [attribute: number, character: string][] & { dirty: boolean };

/**
 * Copies a grid into the library's picture, as far as both reach, and marks the rows that changed. The very last cell is
 * left out: some terminals scroll when it is written.
 */
export function copyCells(grid: CellGrid, lines: readonly ScreenLine[]): void {
  const { cols, rows } = grid;
  for (let y = 0; y < rows; y++) for (let x = 0; x < cols; x++) copyCell(grid, x, y, lines);
}

function copyCell(grid: CellGrid, x: number, y: number, lines: readonly ScreenLine[]): void {
  const line = lines[y];
  const cell = line?.[x];
  if (line === undefined || cell === undefined || isVeryLast(x, y, lines)) return;
  const at = y * grid.cols + x;
  const character = characterOf(grid.code[at]!);
  const attribute = attributeOf(grid.ink[at]!, grid.style[at]!);
  if (cell[0] === attribute && cell[1] === character) return;
  cell[0] = attribute;
  cell[1] = character;
  line.dirty = true;
}

function isVeryLast(x: number, y: number, lines: readonly ScreenLine[]): boolean {
  return y === lines.length - 1 && x === lines[y]!.length - 1;
}

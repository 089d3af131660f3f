import type { CellGrid } from './cell-grid.ts';

/** The grid as lines of text without colour, trailing blanks left out. */
export function toText(grid: CellGrid): string {
  return Array.from({ length: grid.rows }, (_, row) => rowText(grid, row).trimEnd()).join('\n');
}

function rowText(grid: CellGrid, row: number): string {
  return String.fromCodePoint(...grid.code.subarray(row * grid.cols, (row + 1) * grid.cols));
}

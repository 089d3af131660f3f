import { type CellGrid, createGrid, type Size } from './cell-grid.ts';

/** The cells that a drawing sets on a grid of one size, to be set again without drawing. One entry per cell. */
interface Sheet {
  /** Places in the grid's columns. */
  readonly cell: Uint32Array;
  readonly code: Uint32Array;
  readonly ink: Int16Array;
  readonly style: Uint8Array;
}

/** No character that is drawn. */
const UNTOUCHED = 0;

/** What `draw` sets, blanks too, on a grid of that size. */
export function sheetOf(size: Size, draw: (grid: CellGrid) => void): Sheet {
  const grid = createGrid(size);
  grid.code.fill(UNTOUCHED);
  draw(grid);
  const cell = Uint32Array.from(grid.code.keys()).filter((at) => grid.code[at] !== UNTOUCHED);
  return {
    cell,
    code: cell.map((at) => grid.code[at]!),
    ink: Int16Array.from(cell, (at) => grid.ink[at]!),
    style: Uint8Array.from(cell, (at) => grid.style[at]!),
  };
}

/** Sets the cells of a sheet on a grid of the size it was drawn for. */
export function laySheet(grid: CellGrid, { cell, code, ink, style }: Sheet): void {
  for (let i = 0; i < cell.length; i++) {
    const at = cell[i]!;
    grid.code[at] = code[i]!;
    grid.ink[at] = ink[i]!;
    grid.style[at] = style[i]!;
  }
}

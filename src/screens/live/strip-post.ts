import { type CellGrid, type Pen, putCell, REVERSE } from '../cell-grid.ts';
import { EIGHTHS } from './strip-scale.ts';

// Unicode block elements: U+2589 fills seven eighths of a cell from the left, U+258F one.
const NO_EIGHTHS = 0x2590;
const FULL_BLOCK = 0x2588;

/** A mark of the strip as it is drawn. */
interface StripPost {
  /** First eighth of a cell that it covers, from the left edge of the screen. */
  readonly eighth: number;
  /** Width in whole cells. */
  readonly cells: number;
  readonly pen: Pen;
  /** What stands for it in whole cells where block characters cannot be shown. */
  readonly plain: string;
}

/** Draws a post in rows `top` to `bottom`, both edges at its eighth, or in whole cells in plain text. */
export function drawPost(
  grid: CellGrid,
  post: StripPost,
  top: number,
  bottom: number,
  unicode: boolean,
): void {
  for (let row = top; row <= bottom; row++)
    if (unicode) drawEighths(grid, post, row);
    else drawCells(grid, post, row);
}

/** A block that begins inside a cell is drawn as what is left of it, in reverse. */
function drawEighths(grid: CellGrid, { eighth, cells, pen }: StripPost, row: number): void {
  const first = Math.floor(eighth / EIGHTHS);
  const part = eighth - first * EIGHTHS;
  for (let cell = 0; cell < cells; cell++) putCell(grid, first + cell, row, FULL_BLOCK, pen);
  if (part === 0) return;
  const glyph = NO_EIGHTHS - part;
  putCell(grid, first, row, glyph, { ...pen, style: pen.style | REVERSE });
  putCell(grid, first + cells, row, glyph, pen);
}

function drawCells(grid: CellGrid, { eighth, cells, pen, plain }: StripPost, row: number): void {
  const first = Math.round(eighth / EIGHTHS);
  for (let cell = 0; cell < cells; cell++)
    putCell(grid, first + cell, row, plain.charCodeAt(0), pen);
}

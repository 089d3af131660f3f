import { asciiFallback } from './ascii-fallback.ts';
import { blankGrid, type CellGrid, type Size } from './cell-grid.ts';
import { SMALLEST } from './drill-layout.ts';
import type { Look } from './look.ts';
import { writeText } from './write-text.ts';

/**
 * A view of that size by `draw`, or one plain line where the terminal is too small for any view.
 * @param size or a grid of that size, whose cells are taken
 */
export function framedView(
  size: Size | CellGrid,
  look: Look,
  draw: (grid: CellGrid) => void,
): CellGrid {
  const grid = blankGrid(size);
  if (size.cols < SMALLEST.cols || size.rows < SMALLEST.rows)
    writeText(
      grid,
      0,
      0,
      `need ${SMALLEST.cols}x${SMALLEST.rows}, have ${size.cols}x${size.rows}`,
      look.theme.text,
    );
  else draw(grid);
  if (!look.unicode) asciiFallback(grid);
  return grid;
}

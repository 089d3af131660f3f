import { type CellGrid, type Pen, putCell } from './cell-grid.ts';

/** Columns of a pixel, which is one row high: about a square. */
export const PIXEL_COLS = 2;
const FULL_BLOCK = 0x2588;

/** Draws rows of pixels, set where there is a `#`, from (x, y); each pixel `scale` times as large as the smallest. */
export function bigPixels(
  grid: CellGrid,
  x: number,
  y: number,
  pixels: readonly string[],
  pen: Pen,
  scale: number,
): void {
  const width = PIXEL_COLS * scale;
  pixels.forEach((row, down) => {
    for (let across = 0; across < row.length; across++)
      if (row[across] === '#')
        for (let cell = 0; cell < width * scale; cell++)
          putCell(
            grid,
            x + across * width + (cell % width),
            y + down * scale + Math.floor(cell / width),
            FULL_BLOCK,
            pen,
          );
  });
}

import { BIG_ROWS, bigNumber, bigNumberWidth } from './big-number.ts';
import { type Area, type CellGrid, clearArea } from './cell-grid.ts';
import type { Look } from './look.ts';

const MARGIN = 1;
/** Rows of the picture for each row of the digit's pixels, so that the release stays in sight below it. */
const PICTURE_ROWS_PER_SCALE = 10;
const LARGEST_SCALE = 3;

/** Whole seconds left as one big digit in the middle of the screen, high enough to leave the release in sight. */
export function drawCountdown(grid: CellGrid, area: Area, toCueS: number, { theme }: Look): void {
  const text = String(Math.max(1, Math.ceil(toCueS)));
  const fitting = Math.floor(area.rows / PICTURE_ROWS_PER_SCALE);
  const scale = Math.min(LARGEST_SCALE, Math.max(1, fitting));
  const cols = bigNumberWidth(text, scale);
  const x = (grid.cols - cols) >> 1;
  const y = area.y + 1;
  clearArea(grid, {
    x: x - MARGIN,
    y: y - MARGIN,
    cols: cols + 2 * MARGIN,
    rows: BIG_ROWS * scale + 2 * MARGIN,
  });
  bigNumber(grid, x, y, text, theme.strong, scale);
}

import { bigPixels, PIXEL_COLS } from './big-pixels.ts';
import type { CellGrid, Pen } from './cell-grid.ts';

/** Rows of a big digit. */
export const BIG_ROWS = 5;
const DIGIT_PIXELS = 3;
const STEP = (DIGIT_PIXELS + 1) * PIXEL_COLS;

// Three by five pixels per digit, row by row from the top.
const DIGITS: readonly string[] = [
  '### # # # # # # ###',
  ' #  ##   #   #  ###',
  '###   # ### #   ###',
  '###   # ###   # ###',
  '# # # # ###   #   #',
  '### #   ###   # ###',
  '### #   ### # # ###',
  '###   #   #   #   #',
  '### # # ### # # ###',
  '### # # ###   # ###',
];

/** Columns that a big number takes. */
export function bigNumberWidth(text: string, scale = 1): number {
  return (text.length * STEP - PIXEL_COLS) * scale;
}

/** Draws a whole number, five times `scale` rows high, from (x, y). */
export function bigNumber(
  grid: CellGrid,
  x: number,
  y: number,
  text: string,
  pen: Pen,
  scale = 1,
): void {
  [...text].forEach((digit, place) => {
    const font = DIGITS[Number(digit)]!;
    const rows = Array.from({ length: BIG_ROWS }, (_, row) =>
      font.slice(row * (DIGIT_PIXELS + 1), row * (DIGIT_PIXELS + 1) + DIGIT_PIXELS),
    );
    bigPixels(grid, x + place * STEP * scale, y, rows, pen, scale);
  });
}

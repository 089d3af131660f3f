import { type CellGrid, type Pen, putCell } from './cell-grid.ts';

/** Rows of a big digit. */
export const BIG_ROWS = 5;
const PIXEL_COLS = 2;
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
export function bigNumberWidth(text: string): number {
  return text.length * STEP - PIXEL_COLS;
}

/** Draws a whole number, five rows high, from (x, y). */
export function bigNumber(grid: CellGrid, x: number, y: number, text: string, pen: Pen): void {
  [...text].forEach((digit, place) => {
    for (let pixel = 0; pixel < DIGIT_PIXELS * BIG_ROWS; pixel++) {
      const row = Math.floor(pixel / DIGIT_PIXELS);
      const column = pixel % DIGIT_PIXELS;
      if (DIGITS[Number(digit)]![row * (DIGIT_PIXELS + 1) + column] !== '#') continue;
      const left = x + place * STEP + column * PIXEL_COLS;
      for (let cell = 0; cell < PIXEL_COLS; cell++)
        putCell(grid, left + cell, y + row, 0x2588, pen);
    }
  });
}

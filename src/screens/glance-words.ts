import { BIG_ROWS } from './big-number.ts';
import { bigWord, bigWordWidth } from './big-word.ts';
import type { Area, CellGrid, Pen } from './cell-grid.ts';

/** Rows that words below each other take, a blank one after each; 0 where they do not fit or there are none. */
export function glanceRows(words: readonly string[], area: Pick<Area, 'cols' | 'rows'>): number {
  const rows = words.length * (BIG_ROWS + 1);
  const fits = rows <= area.rows && words.every((word) => bigWordWidth(word) <= area.cols);
  return fits ? rows : 0;
}

/** Draws the words below each other from row `y`, in the middle of the area; the caller has asked for their room. */
export function drawGlance(
  grid: CellGrid,
  area: Pick<Area, 'x' | 'cols'>,
  y: number,
  words: readonly string[],
  pen: Pen,
): void {
  words.forEach((word, place) => {
    const x = area.x + ((area.cols - bigWordWidth(word)) >> 1);
    bigWord(grid, x, y + place * (BIG_ROWS + 1), word, pen);
  });
}

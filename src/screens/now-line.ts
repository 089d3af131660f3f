import { type Area, type CellGrid, putCell } from './cell-grid.ts';
import type { Look } from './look.ts';
import { writeText } from './write-text.ts';

/** Between blanks, so that no dot of a curve touches the word or stands in it. */
const NOW = ' now ';

/**
 * The upright line of the moment, down to the base line of a plot; left out where it stands outside. To be drawn last:
 * nothing in the plot may stand over it.
 * @param side where its name stands while there is room
 */
export function drawNow(
  grid: CellGrid,
  area: Area,
  column: number,
  { theme }: Look,
  side: 'left' | 'right' = 'left',
): void {
  if (column < area.x || column >= area.x + area.cols) return;
  for (let row = 0; row <= area.rows; row++)
    putCell(grid, column, area.y + row, (row === area.rows ? '┴' : '│').codePointAt(0)!, theme.now);
  const room = side === 'left' ? column - area.x : area.x + area.cols - column - 1;
  const onLeft = room >= NOW.length ? side === 'left' : side === 'right';
  writeText(grid, onLeft ? column - NOW.length : column + 1, area.y, NOW, theme.now);
}

import { type Area, type CellGrid, putCell } from './cell-grid.ts';
import type { Look } from './look.ts';
import { writeText } from './write-text.ts';

const NOW = 'now';

/** The upright line of the moment, down to the base line of a plot; left out where it stands outside. */
export function drawNow(grid: CellGrid, area: Area, column: number, { theme }: Look): void {
  if (column < area.x || column >= area.x + area.cols) return;
  for (let row = 0; row <= area.rows; row++)
    putCell(grid, column, area.y + row, (row === area.rows ? '┴' : '│').codePointAt(0)!, theme.now);
  // On the left, where the rep is over, unless there is no room yet.
  const label = column - area.x > NOW.length ? column - NOW.length - 1 : column + 2;
  writeText(grid, label, area.y, NOW, theme.now);
}

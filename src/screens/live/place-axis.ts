import { type Area, type CellGrid, putCell } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { columnOf, type PlotEnds, type PlotScale } from '../plot-scale.ts';
import { writeText } from '../write-text.ts';
import { placeText } from './place-text.ts';

const STEPS_M = [5, 10, 20, 25, 50, 100] as const;
const LABEL_COLS = 8;

/** Base line of a lane, and below it the places as boards count them. */
export function drawPlaces(
  grid: CellGrid,
  area: Area,
  { from, to }: PlotEnds,
  scale: PlotScale,
  { theme }: Look,
): void {
  const axis = area.y + area.rows;
  const right = area.x + area.cols;
  writeText(grid, area.x - 1, axis, `└${'─'.repeat(area.cols)}`, theme.quiet);
  const step = STEPS_M.find((each) => each >= (LABEL_COLS * (to - from)) / area.cols) ?? 200;
  let free = area.x - 1;
  for (let at = Math.ceil(from / step) * step; at < to; at += step) {
    const column = columnOf(scale, area, at);
    const label = placeText(at);
    const start = Math.min(Math.max(area.x, column - (label.length >> 1)), right - label.length);
    putCell(grid, column, axis, '┬'.codePointAt(0)!, theme.quiet);
    if (start >= free) free = writeText(grid, start, axis + 1, label, theme.quiet) + 1;
  }
}

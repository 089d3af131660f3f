import type { TextUnits } from '../../unit-text.ts';
import { metresFromFeet } from '../../units.ts';
import { type Area, type CellGrid, putCell } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { columnOf, type PlotEnds, type PlotScale } from '../plot-scale.ts';
import { writeText } from '../write-text.ts';
import { placeText } from './place-text.ts';

/** Round numbers in either unit, and the one above them all. */
const STEPS_M: readonly number[] = [5, 10, 20, 25, 50, 100, 200];
const STEPS_FT: readonly number[] = [20, 50, 100, 200, 300, 600];
const LABEL_COLS = 8;

/** Base line of a lane, and below it the places as boards count them. */
export function drawPlaces(
  grid: CellGrid,
  area: Area,
  { from, to }: PlotEnds,
  scale: PlotScale,
  { theme, units = 'metric' }: Look,
): void {
  const axis = area.y + area.rows;
  const right = area.x + area.cols;
  writeText(grid, area.x - 1, axis, `└${'─'.repeat(area.cols)}`, theme.quiet);
  const step = stepM((LABEL_COLS * (to - from)) / area.cols, units);
  let free = area.x - 1;
  for (let at = Math.ceil(from / step) * step; at < to; at += step) {
    const column = columnOf(scale, area, at);
    const label = placeText(at, units);
    const start = Math.min(Math.max(area.x, column - (label.length >> 1)), right - label.length);
    putCell(grid, column, axis, '┬'.codePointAt(0)!, theme.quiet);
    if (start >= free) free = writeText(grid, start, axis + 1, label, theme.quiet) + 1;
  }
}

/** The least round step that leaves so much room. */
function stepM(leastM: number, units: TextUnits): number {
  const steps = units === 'metric' ? STEPS_M : STEPS_FT.map(metresFromFeet);
  return steps.find((each) => each >= leastM) ?? steps.at(-1)!;
}

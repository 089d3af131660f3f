import type { TargetSummary } from '../drill/drill-view.ts';
import { LAP_HEADS, lapRows } from '../drill/event/lap-table.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import type { Look } from './look.ts';
import { fitText, textWidth, writeText } from './write-text.ts';

const GAP = 2;

/** What laps came to, a row for each corner; where the area is too low for all of them the last ones are counted. */
export function drawLaps(
  grid: CellGrid,
  area: Area,
  summaries: readonly TargetSummary[],
  { theme }: Look,
): void {
  const rows = [LAP_HEADS, ...lapRows(summaries)];
  const widths = LAP_HEADS.map((_, i) => Math.max(...rows.map((row) => textWidth(row[i]!))));
  const fits = rows.length <= area.rows ? rows : rows.slice(0, area.rows - 1);
  for (const [y, row] of fits.entries()) {
    const line = row.map((cell, i) => cell.padEnd(widths[i]! + GAP)).join('');
    const pen = y === 0 ? theme.quiet : theme.text;
    writeText(grid, area.x, area.y + y, fitText(line.trimEnd(), area.cols), pen);
  }
  const left = rows.length - fits.length;
  if (left > 0) writeText(grid, area.x, area.y + fits.length, `and ${left} more`, theme.quiet);
}

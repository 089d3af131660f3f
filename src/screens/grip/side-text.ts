import type { Area, CellGrid, Pen } from '../cell-grid.ts';
import type { Look } from '../look.ts';
import { wrapText, writeText } from '../write-text.ts';

/** A line of words and how it is drawn. */
export type SideLine = readonly [text: string, pen: Pen];

/** What the lines of a picture are, and below it one reading of it in words. */
export function drawSideText(
  grid: CellGrid,
  area: Area,
  legend: readonly SideLine[],
  reading: string,
  { theme }: Look,
): void {
  const lines = [
    ...legend,
    ['', theme.text] as const,
    ...wrapText(reading, area.cols).map((line): SideLine => [line, theme.strong]),
  ];
  lines.slice(0, area.rows).forEach(([line, pen], row) => {
    writeText(grid, area.x, area.y + row, line, pen);
  });
}

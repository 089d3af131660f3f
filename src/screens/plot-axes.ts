import { type Area, type CellGrid, putCell } from './cell-grid.ts';
import type { Look } from './look.ts';
import { columnOf, type PlotScale, rowOf } from './plot-scale.ts';
import type { PlotWindow } from './plot-window.ts';
import { writeRight, writeText } from './write-text.ts';

/** Columns left of a plot for its scale. */
export const SCALE_COLS = 6;

const STEPS = [1, 2, 5, 10, 20, 25, 50] as const;
const TIME_STEPS_S = [0.1, 0.2, 0.5, 1, 2, 5, 10] as const;
const TIME_LABEL_COLS = 8;

/** Level scale in per cent of full scale on the left, base line and seconds below; `area` is the plot itself. */
export function drawAxes(
  grid: CellGrid,
  area: Area,
  window: PlotWindow,
  scale: PlotScale,
  look: Look,
  times = true,
): void {
  drawLevelScale(grid, area, window.topLevel, scale, look);
  if (times) drawTimes(grid, area, window, scale, look);
  else drawBaseLine(grid, area, look);
}

/** The line at level 0 alone. */
export function drawBaseLine(grid: CellGrid, area: Area, { theme }: Look): void {
  const axis = area.y + area.rows;
  writeText(grid, area.x - 1, axis, `└${'─'.repeat(area.cols)}`, theme.quiet);
}

/** Level in per cent of full scale left of a plot, from 0 at its base line to `topLevel`. */
export function drawLevelScale(
  grid: CellGrid,
  area: Area,
  topLevel: number,
  scale: PlotScale,
  { theme }: Look,
): void {
  const percent = 100 * topLevel;
  const step = STEPS.find((each) => (each / percent) * area.rows >= 2) ?? 100;
  for (let level = step; level < percent; level += step)
    writeRight(
      grid,
      area.x - 2,
      rowOf(scale, area, level / 100),
      `${formatStep(level)} %`,
      theme.quiet,
    );
  writeRight(grid, area.x - 2, area.y + area.rows, '0 %', theme.quiet);
}

function drawTimes(
  grid: CellGrid,
  area: Area,
  window: PlotWindow,
  scale: PlotScale,
  look: Look,
): void {
  const { theme } = look;
  const axis = area.y + area.rows;
  drawBaseLine(grid, area, look);
  const perColS = (window.toS - window.fromS) / area.cols;
  const step = TIME_STEPS_S.find((each) => each / perColS >= TIME_LABEL_COLS) ?? 20;
  let free = area.x - 1;
  for (let at = Math.ceil(window.fromS / step) * step; at < window.toS; at += step) {
    const column = columnOf(scale, area, at);
    const label = `${formatStep(at)} s`;
    const start = Math.min(
      Math.max(area.x, column - (label.length >> 1)),
      area.x + area.cols - label.length,
    );
    putCell(grid, column, axis, '┬'.codePointAt(0)!, theme.quiet);
    if (start < free) continue;
    free = writeText(grid, start, axis + 1, label, theme.quiet) + 1;
  }
}

function formatStep(value: number): string {
  return String(Number(value.toFixed(1)) + 0);
}

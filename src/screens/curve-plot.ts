import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';
import { type Area, type CellGrid, putCell } from './cell-grid.ts';
import { paintRaster } from './dot-raster.ts';
import type { Look } from './look.ts';
import { ownRaster } from './own-raster.ts';
import { drawAxes } from './plot-axes.ts';
import { columnOf, type PlotScale, plotScale } from './plot-scale.ts';
import type { PlotWindow } from './plot-window.ts';
import { corridorRaster, targetRaster } from './target-raster.ts';
import { writeText } from './write-text.ts';

const NOW = 'now';

/** What a plot of level over time shows. */
export interface CurvePlot {
  readonly window: PlotWindow;
  readonly target: Target | null;
  readonly own: Track | null;
  /** Where the now line stands; null for none. */
  readonly nowS: number | null;
}

/**
 * Target with corridor, now line and own trace, in this order from back to front, with the scales beside and below
 * `area` (`SCALE_COLS` to the left, two rows below).
 */
export function drawCurvePlot(grid: CellGrid, area: Area, plot: CurvePlot, look: Look): PlotScale {
  const scale = plotScale(plot.window, area);
  drawAxes(grid, area, plot.window, scale, look);
  if (plot.target !== null) drawTarget(grid, area, plot.target, scale, look);
  if (plot.nowS !== null) drawNow(grid, area, columnOf(scale, area, plot.nowS), look);
  if (plot.own !== null)
    paintRaster(
      grid,
      area,
      ownRaster(plot.own, scale, plot.nowS ?? Number.NEGATIVE_INFINITY),
      look.theme.driver,
      look.unicode ? null : '#',
    );
  return scale;
}

function drawTarget(
  grid: CellGrid,
  area: Area,
  target: Target,
  scale: PlotScale,
  { theme, unicode }: Look,
): void {
  paintRaster(grid, area, corridorRaster(target, scale), theme.target, unicode ? null : '.');
  paintRaster(grid, area, targetRaster(target, scale), theme.target, unicode ? null : '-');
}

function drawNow(grid: CellGrid, area: Area, column: number, { theme }: Look): void {
  if (column < area.x || column >= area.x + area.cols) return;
  for (let row = 0; row <= area.rows; row++)
    putCell(grid, column, area.y + row, (row === area.rows ? '┴' : '│').codePointAt(0)!, theme.now);
  // On the left, where the rep is over, unless there is no room yet.
  const label = column - area.x > NOW.length ? column - NOW.length - 1 : column + 2;
  writeText(grid, label, area.y, NOW, theme.now);
}

import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';
import type { Area, CellGrid } from './cell-grid.ts';
import { paintRaster } from './dot-raster.ts';
import type { Look } from './look.ts';
import { drawNow } from './now-line.ts';
import { ownRaster } from './own-raster.ts';
import { drawAxes } from './plot-axes.ts';
import { columnOf, type PlotScale, plotScale } from './plot-scale.ts';
import type { PlotWindow } from './plot-window.ts';
import { corridorRaster, targetRaster } from './target-raster.ts';

/** What a plot of level over time shows. */
export interface CurvePlot {
  readonly window: PlotWindow;
  readonly target: Target | null;
  readonly own: Track | null;
  /** Where the now line stands; null for none. */
  readonly nowS: number | null;
  /** How far the target is drawn; all of it by default. */
  readonly targetUntilS?: number;
  /** False to leave seconds out, for a plot with another one below. */
  readonly times?: boolean;
  /** False to leave the corridor out. */
  readonly corridor?: boolean;
}

/**
 * Target with corridor, now line and own trace, in this order from back to front, with the scales beside and below
 * `area` (`SCALE_COLS` to the left, two rows below).
 */
export function drawCurvePlot(grid: CellGrid, area: Area, plot: CurvePlot, look: Look): PlotScale {
  const scale = plotScale(plot.window, area);
  drawAxes(grid, area, plot.window, scale, look, plot.times);
  if (plot.target !== null) drawTarget(grid, area, plot.target, plot, scale, look);
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
  { targetUntilS, corridor }: CurvePlot,
  scale: PlotScale,
  { theme, unicode }: Look,
): void {
  if (corridor !== false) {
    const edges = corridorRaster(target, scale, targetUntilS);
    paintRaster(grid, area, edges, theme.target, unicode ? null : '.');
  }
  const line = targetRaster(target, scale, targetUntilS);
  paintRaster(grid, area, line, theme.target, unicode ? null : '-');
}

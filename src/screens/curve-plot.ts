import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';
import type { Area, CellGrid, Size } from './cell-grid.ts';
import { paintRaster } from './dot-raster.ts';
import type { Look } from './look.ts';
import { drawNow } from './now-line.ts';
import { ownRaster } from './own-raster.ts';
import { drawAxes } from './plot-axes.ts';
import { columnOf, type PlotScale, plotScale } from './plot-scale.ts';
import type { PlotWindow } from './plot-window.ts';
import { remembered } from './remembered.ts';
import { laySheet, sheetOf } from './sheet.ts';
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
  const { window, target, times, corridor, targetUntilS, own, nowS } = plot;
  const scale = plotScale(window, area);
  // In whole dots: the sheet is another one only when a dot more is to be seen.
  const untilDot = Math.min(scale.dotCols, scale.dotX(targetUntilS ?? Number.POSITIVE_INFINITY));
  const { cols, rows } = grid;
  const still = { target, times, corridor, untilS: scale.at(untilDot) };
  laySheet(grid, stillSheet({ cols, rows }, area, window, still, look));
  if (nowS !== null) drawNow(grid, area, columnOf(scale, area, nowS), look);
  if (own !== null)
    paintRaster(
      grid,
      area,
      ownRaster(own, scale, nowS ?? Number.NEGATIVE_INFINITY),
      look.theme.driver,
      look.unicode ? null : '#',
    );
  return scale;
}

/** What stands still while a rep is driven, the target as far as `untilS`. */
interface StillPlot extends Pick<CurvePlot, 'target' | 'times' | 'corridor'> {
  readonly untilS: number;
}

const stillSheet = remembered(
  (size: Size, area: Area, window: PlotWindow, still: StillPlot, look: Look) =>
    sheetOf(size, (grid) => {
      const scale = plotScale(window, area);
      drawAxes(grid, area, window, scale, look, still.times);
      if (still.target !== null) drawTarget(grid, area, still.target, still, scale, look);
    }),
);

function drawTarget(
  grid: CellGrid,
  area: Area,
  target: Target,
  { untilS, corridor }: StillPlot,
  scale: PlotScale,
  { theme, unicode }: Look,
): void {
  if (corridor !== false) {
    const edges = corridorRaster(target, scale, untilS);
    paintRaster(grid, area, edges, theme.target, unicode ? null : '.');
  }
  const line = targetRaster(target, scale, untilS);
  paintRaster(grid, area, line, theme.target, unicode ? null : '-');
}

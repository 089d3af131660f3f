import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';
import type { Area, CellGrid, Size } from './cell-grid.ts';
import { paintRaster } from './dot-raster.ts';
import type { Look } from './look.ts';
import { drawNow } from './now-line.ts';
import { ownRaster } from './own-raster.ts';
import { paintTarget, type TargetRasters } from './paint-target.ts';
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
 * Target with corridor, own trace and now line, in this order from back to front, with the scales beside and below
 * `area` (`SCALE_COLS` to the left, two rows below).
 */
export function drawCurvePlot(grid: CellGrid, area: Area, plot: CurvePlot, look: Look): PlotScale {
  const { window, target, nowS, own } = plot;
  const scale = plotScale(window, area);
  const { cols, rows } = grid;
  laySheet(grid, scalesSheet(cols, rows, area, window, plot.times !== false, look));
  if (target !== null) {
    const seen = {
      corridor: plot.corridor !== false,
      until: plot.targetUntilS ?? Number.POSITIVE_INFINITY,
    };
    paintTarget(grid, area, targetRasters(target, window, area), scale, seen, look);
  }
  if (own !== null) {
    // One that grows is another one in every frame.
    const raster = nowS === null ? wholeRaster(own, window, area) : ownRaster(own, scale, nowS);
    paintRaster(grid, area, raster, look.theme.driver, look.unicode ? null : '#');
  }
  if (nowS !== null) drawNow(grid, area, columnOf(scale, area, nowS), look);
  return scale;
}

const scalesSheet = remembered(
  (cols: number, rows: number, area: Area, window: PlotWindow, times: boolean, look: Look) =>
    sheetOf({ cols, rows }, (grid) =>
      drawAxes(grid, area, window, plotScale(window, area), look, times),
    ),
);

const targetRasters = remembered(
  (target: Target, window: PlotWindow, size: Size): TargetRasters => {
    const scale = plotScale(window, size);
    return { level: targetRaster(target, scale), corridor: corridorRaster(target, scale) };
  },
);

const wholeRaster = remembered((own: Track, window: PlotWindow, size: Size) =>
  ownRaster(own, plotScale(window, size), Number.NEGATIVE_INFINITY),
);

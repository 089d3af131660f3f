import type { Area, Size } from './cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN } from './dot-raster.ts';
import type { PlotWindow } from './plot-window.ts';

/** Where times and levels of a window fall on the dots and cells of an area. */
export interface PlotScale {
  readonly dotCols: number;
  readonly dotRows: number;
  /** Time at the left edge of a dot column. */
  timeAt(dotX: number): number;
  /** Dot column of a time, not clipped. */
  dotX(timeS: number): number;
  /** Dot row of a level from the top, not clipped. Level 0 is the lowest dot. */
  dotY(level: number): number;
}

export function plotScale(window: PlotWindow, size: Size): PlotScale {
  const dotCols = size.cols * DOTS_ACROSS;
  const dotRows = size.rows * DOTS_DOWN;
  const perDotS = (window.toS - window.fromS) / dotCols;
  return {
    dotCols,
    dotRows,
    timeAt: (dotX) => window.fromS + dotX * perDotS,
    dotX: (timeS) => Math.floor((timeS - window.fromS) / perDotS + 1e-9),
    dotY: (level) => Math.round((1 - level / window.topLevel) * (dotRows - 1)),
  };
}

/** Column of the grid in which a time falls; left or right of the area where the window does not hold it. */
export function columnOf(scale: PlotScale, area: Area, timeS: number): number {
  return area.x + Math.floor(scale.dotX(timeS) / DOTS_ACROSS);
}

/** Row of the grid in which a level falls. */
export function rowOf(scale: PlotScale, area: Area, level: number): number {
  return area.y + Math.floor(scale.dotY(level) / DOTS_DOWN);
}

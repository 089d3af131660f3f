import type { Area, Size } from './cell-grid.ts';
import { DOTS_ACROSS, DOTS_DOWN } from './dot-raster.ts';
import type { PlotWindow } from './plot-window.ts';

/** What an area shows: a stretch of time or road from left to right, and values from bottom to top. */
export interface PlotEnds {
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
}

/** Where times or places and their values fall on the dots and cells of an area. */
export interface PlotScale {
  readonly dotCols: number;
  readonly dotRows: number;
  /** Time or place at the left edge of a dot column. */
  at(dotX: number): number;
  /** Dot column of a time or place, not clipped. */
  dotX(at: number): number;
  /** Dot row of a value from the top, not clipped. The bottom value is the lowest dot. */
  dotY(value: number): number;
}

/** The scale that fills an area of that size. */
export function scaleBetween({ from, to, bottom, top }: PlotEnds, size: Size): PlotScale {
  const dotCols = size.cols * DOTS_ACROSS;
  const dotRows = size.rows * DOTS_DOWN;
  const perDot = (to - from) / dotCols;
  return {
    dotCols,
    dotRows,
    at: (dotX) => from + dotX * perDot,
    dotX: (at) => Math.floor((at - from) / perDot + 1e-9),
    dotY: (value) => Math.round((1 - (value - bottom) / (top - bottom)) * (dotRows - 1)),
  };
}

/** Levels over time, from level 0. */
export function plotScale({ fromS, toS, topLevel }: PlotWindow, size: Size): PlotScale {
  return scaleBetween({ from: fromS, to: toS, bottom: 0, top: topLevel }, size);
}

/** Column of the grid in which a time or place falls; outside the area where the scale does not hold it. */
export function columnOf(scale: PlotScale, area: Area, at: number): number {
  return area.x + Math.floor(scale.dotX(at) / DOTS_ACROSS);
}

/** Row of the grid in which a value falls. */
export function rowOf(scale: PlotScale, area: Area, value: number): number {
  return area.y + Math.floor(scale.dotY(value) / DOTS_DOWN);
}

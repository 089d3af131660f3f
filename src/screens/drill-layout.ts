import type { Area, Size } from './cell-grid.ts';
import { SCALE_COLS } from './plot-axes.ts';
import { remembered } from './remembered.ts';

/** The smallest terminal that the screens are laid out for. */
export const SMALLEST: Size = { cols: 80, rows: 24 };

/** Where each part of the drill stands. Single rows are given by their row. */
export interface DrillLayout {
  readonly title: number;
  readonly prompt: number;
  readonly headings: number;
  /** The picture of target and trace; scales stand left of it and in three rows below. */
  readonly plot: Area;
  /** Beside the plot with its own scales, or in the plot's last columns where nothing else needs the room. */
  readonly side: Area;
  readonly levels: number;
  /** Heading and last reps. */
  readonly reps: Area;
  readonly health: number;
  readonly keys: number;
}

const PLOT_TOP = 3;
/** Base line, seconds, names of the key points. */
const BELOW_PLOT = 3;
const LEVEL_ROWS = 2;

/**
 * The same object for the same size.
 * @param beside true where the side panel needs columns of its own
 */
export function drillLayout({ cols, rows }: Size, beside: boolean): DrillLayout {
  return layoutOf({ cols, rows }, beside);
}

const layoutOf = remembered((size: Size, beside: boolean): DrillLayout => {
  const roomy = size.rows >= 40;
  const space = roomy ? 1 : 0;
  const repRows = 1 + (roomy ? 5 : size.rows >= 30 ? 4 : 2);
  const keys = size.rows - 1;
  const health = keys - 1;
  const reps = health - space - repRows;
  const levels = reps - space - LEVEL_ROWS;
  const plotRows = levels - space - BELOW_PLOT - PLOT_TOP;
  const sideCols = size.cols >= 120 ? 40 : 18;
  const plotCols = size.cols - SCALE_COLS - 2 - (beside ? sideCols + SCALE_COLS + 1 : 0);
  const sideX = size.cols - 2 - sideCols;
  return {
    title: 0,
    prompt: 1,
    headings: 2,
    plot: { x: SCALE_COLS + 1, y: PLOT_TOP, cols: plotCols, rows: plotRows },
    side: { x: sideX, y: PLOT_TOP, cols: sideCols, rows: plotRows },
    levels,
    reps: { x: 1, y: reps, cols: size.cols - 2, rows: repRows },
    health,
    keys,
  };
});

/** A plot's area in two of the same height, with a base line between them. */
export function stackedAreas(area: Area): { readonly above: Area; readonly below: Area } {
  const rows = (area.rows - 1) >> 1;
  return {
    above: { ...area, rows },
    below: { ...area, y: area.y + area.rows - rows, rows },
  };
}

import type { Area, Size } from '../cell-grid.ts';
import { SCALE_COLS } from '../plot-axes.ts';

/** Where each part of the editor stands. Single rows are given by their row. */
interface EditLayout {
  readonly title: number;
  readonly headings: number;
  /** Level; its scale stands left of it and in three rows below. */
  readonly plot: Area;
  /** The lanes share the plot's columns; their headings stand in the row above. */
  readonly rate: Area;
  /** Null without a car. */
  readonly grip: Area | null;
  readonly side: Area;
  /** Two rows. */
  readonly message: number;
  readonly keys: number;
}

const SIDE_COLS = 29;
const PLOT_TOP = 2;
/** Base line, places and names. */
const BELOW_PLOT = 3;
const GRIP_ROWS = 2;
const MESSAGE_ROWS = 2;

export function editLayout(size: Size, withCar: boolean): EditLayout {
  const keys = size.rows - 1;
  const message = keys - MESSAGE_ROWS;
  const x = SCALE_COLS + 1;
  const cols = size.cols - x - SIDE_COLS - 2;
  const grip = withCar ? { x, y: message - GRIP_ROWS, cols, rows: GRIP_ROWS } : null;
  const rateRows = size.rows >= 40 ? 7 : 3;
  const rate = { x, y: (grip === null ? message : grip.y - 1) - rateRows, cols, rows: rateRows };
  const plot = { x, y: PLOT_TOP, cols, rows: rate.y - 1 - BELOW_PLOT - PLOT_TOP };
  return {
    title: 0,
    headings: 1,
    plot,
    rate,
    grip,
    side: { x: size.cols - SIDE_COLS, y: PLOT_TOP, cols: SIDE_COLS - 1, rows: message - PLOT_TOP },
    message,
    keys,
  };
}

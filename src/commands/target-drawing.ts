import { asciiFallback } from '../screens/ascii-fallback.ts';
import { type Area, type CellGrid, createGrid } from '../screens/cell-grid.ts';
import { drawCurvePlot } from '../screens/curve-plot.ts';
import { createRaster, paintRaster, setSpan } from '../screens/dot-raster.ts';
import { toText } from '../screens/grid-text.ts';
import type { Look } from '../screens/look.ts';
import { drawMarks, marksOf } from '../screens/mark-labels.ts';
import { SCALE_COLS } from '../screens/plot-axes.ts';
import { type PlotScale, plotScale } from '../screens/plot-scale.ts';
import type { PlotWindow } from '../screens/plot-window.ts';
import { writeRight, writeText } from '../screens/write-text.ts';
import { overTime } from '../target/over-time.ts';
import type { Curve, Target } from '../target/target.ts';

const COLS = 80;
const PLOT: Area = { x: SCALE_COLS + 1, y: 0, cols: COLS - SCALE_COLS - 3, rows: 13 };
/** Base line, seconds and names of the marks stand below the plot. */
const STEERING: Area = { ...PLOT, y: PLOT.rows + 4, rows: 4 };

/** The target over time in 80 columns: level with corridor and marks, and the steering below it. */
export function targetDrawing(target: Target, look: Look): string {
  const timed = overTime(target);
  const rows = timed.steering === null ? PLOT.rows + 3 : STEERING.y + STEERING.rows;
  const grid = createGrid({ cols: COLS, rows });
  const window = windowOf(timed);
  const scale = drawCurvePlot(grid, PLOT, { window, target: timed, own: null, nowS: null }, look);
  drawMarks(grid, PLOT, scale, marksOf(timed), look);
  if (timed.steering !== null) drawSteering(grid, timed.steering, window, look);
  if (!look.unicode) asciiFallback(grid);
  return toText(grid);
}

function windowOf({ marks, peakLevel }: Target): PlotWindow {
  const end = Math.max(marks.brakeOff, marks.apex ?? 0);
  return { fromS: marks.rise - 0.2, toS: end + 0.2, topLevel: 1.1 * peakLevel };
}

/** Degrees between the largest to the left (up) and the largest to the right (down), filled from straight ahead. */
function drawSteering(grid: CellGrid, steering: Curve, window: PlotWindow, look: Look): void {
  const scale = plotScale(window, STEERING);
  const angles = Array.from({ length: scale.dotCols }, (_, x) => steering.at(scale.at(x + 0.5)));
  const left = Math.max(0, ...angles);
  const right = Math.min(0, ...angles);
  const raster = createRaster(STEERING);
  const dotY = (angle: number): number => rowOfAngle(angle, left, right, scale);
  angles.forEach((angle, x) => {
    if (Math.abs(angle) > 0.5) setSpan(raster, x, dotY(0), dotY(angle));
  });
  writeText(grid, 0, STEERING.y - 1, 'steering', look.theme.quiet);
  if (left > 0) labelAngle(grid, STEERING.y, left, 'L', look);
  if (right < 0) labelAngle(grid, STEERING.y + STEERING.rows - 1, -right, 'R', look);
  paintRaster(grid, STEERING, raster, look.theme.target, look.unicode ? null : '#');
}

function rowOfAngle(angle: number, left: number, right: number, scale: PlotScale): number {
  return Math.round(((left - angle) / (left - right || 1)) * (scale.dotRows - 1));
}

function labelAngle(grid: CellGrid, y: number, angle: number, side: string, look: Look): void {
  writeRight(grid, STEERING.x - 2, y, `${angle.toFixed(0)}${side}`, look.theme.quiet);
}
